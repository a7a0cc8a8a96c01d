using NodaTime;

namespace NightWatch.Planning.Samples;

/// <summary>
/// The questions that a night is asked to fit a chance on: pieces of it and needs of many lengths, since what is learnt on one window and
/// one need serves no other.
/// </summary>
internal static class SampleQuestions
{
    /// <summary>Needs of the whole night, minutes.</summary>
    private static readonly double[] wholeNeedsMin = [45, 150, 240];

    /// <summary>Need of either half, minutes.</summary>
    private const double HalfNeedMin = 90;

    /// <summary>Lengths of pieces and the need asked of one, minutes. One of each length a night: neighbours know of each other.</summary>
    private static readonly (double LengthMin, double NeedMin)[] pieces = [(120, 60), (180, 120), (300, 180)];

    /// <summary>All of them but the watch's own, in a fixed order.</summary>
    /// <param name="night">From the first candidate's start to the last one's end.</param>
    /// <param name="number">Of the night: which of the pieces come in turn.</param>
    public static IEnumerable<(Interval Piece, double NeedMin)> Of(Interval night, int number)
    {
        foreach (var need in wholeNeedsMin) yield return (night, need);
        var middle = night.Start + night.Duration / 2;
        yield return (new Interval(night.Start, middle), HalfNeedMin);
        yield return (new Interval(middle, night.End), HalfNeedMin);
        foreach (var (lengthMin, need) in pieces)
        {
            var length = Duration.FromMinutes(lengthMin);
            var count = (int)(night.Duration / length);
            if (count == 0) continue;
            var start = night.Start + length * (number % count);
            yield return (new Interval(start, start + length), need);
        }
    }
}
