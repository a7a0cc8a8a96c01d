using NodaTime;

namespace NightWatch.Planning.Samples;

/// <summary>
/// The questions that a night is asked to fit a chance on: pieces of it and needs of many lengths, since what is learnt on one window and
/// one need serves no other.
/// </summary>
internal static class SampleQuestions
{
    /// <summary>Needs of the whole night, minutes.</summary>
    private static readonly double[] wholeNeeds = [45, 90, 150, 240];

    /// <summary>Lengths of pieces and the needs asked of them, minutes.</summary>
    private static readonly (double LengthMin, double[] NeedsMin)[] pieces = [(120, [45, 90]), (180, [60, 120]), (300, [90, 180])];

    private static readonly double[] halfNeeds = [60, 120];

    /// <summary>All of them but the watch's own, in a fixed order.</summary>
    /// <param name="night">From the first candidate's start to the last one's end.</param>
    public static IEnumerable<(Interval Piece, double NeedMin)> Of(Interval night)
    {
        foreach (var need in wholeNeeds) yield return (night, need);
        var middle = night.Start + night.Duration / 2;
        foreach (var need in halfNeeds)
        {
            yield return (new Interval(night.Start, middle), need);
            yield return (new Interval(middle, night.End), need);
        }

        foreach (var (lengthMin, needs) in pieces)
        {
            var length = Duration.FromMinutes(lengthMin);
            for (var start = night.Start; start + length <= night.End; start += length)
            {
                foreach (var need in needs) yield return (new Interval(start, start + length), need);
            }
        }
    }
}
