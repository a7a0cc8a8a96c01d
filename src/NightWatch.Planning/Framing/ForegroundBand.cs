using NightWatch.Planning.Camera;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>Which headings show as much ground as wished.</summary>
internal sealed class ForegroundBand(FramingTask task)
{
    private const int BucketDeg = 10; // the skyline's mean height over the width of a frame changes little in that
    private const double LeastInSight = 0.03; // of the frame: less is not seen as ground
    private const double SlackDeg = 4; // by which the band may lie elsewhere between two of its azimuths
    private readonly Dictionary<int, (double Low, double High)> bands = [];
    private readonly Dictionary<(double AltitudeDeg, double RollDeg), double> shares = [];

    /// <summary>Any heading will do.</summary>
    public bool IsOpen { get; } = task.Foreground.Holds(0) && task.Foreground.Holds(1);

    /// <summary>The skyline stands equally high all round.</summary>
    public bool IsLevel { get; } = task.Horizon.Points.Count < 2;

    /// <summary>The ground fills as much of the frame as wished.</summary>
    public bool Holds(Heading heading) => IsOpen || task.Foreground.Holds(Share(heading));

    /// <summary>The skyline crosses the frame, with a strip of ground below it.</summary>
    public bool IsInSight(Heading heading) => Share(heading) is >= LeastInSight and < 1;

    /// <summary>How far an altitude lies from the middle of the band towards its azimuth, degrees; infinite: too far to be in it.</summary>
    public double OffDeg(double azimuthDeg, double altitudeDeg, double rollDeg)
    {
        var place = azimuthDeg / BucketDeg;
        var below = (int)Math.Floor(place);
        var (one, other) = (At(below, rollDeg), At(below + 1, rollDeg));
        var low = one.Low + (place - below) * (other.Low - one.Low);
        var high = one.High + (place - below) * (other.High - one.High);
        return altitudeDeg < low - SlackDeg || altitudeDeg > high + SlackDeg
            ? double.PositiveInfinity
            : Math.Abs(altitudeDeg - (low + high) / 2);
    }

    /// <summary>The lowest and highest altitude of the axis that may do so towards any azimuth.</summary>
    public (double LowDeg, double HighDeg) Widest(double rollDeg)
    {
        if (IsLevel) return At(0, rollDeg);
        var (low, high) = (AimSearch.HighestAxisDeg, AimSearch.LowestAxisDeg);
        for (var bucket = 0; bucket < 360 / BucketDeg; bucket += 3)
        {
            var (from, to) = At(bucket, rollDeg);
            (low, high) = (Math.Min(low, from), Math.Max(high, to));
        }

        return (low - SlackDeg, high + SlackDeg);
    }

    // About the lowest and highest altitude of the axis towards a whole number of buckets.
    private (double Low, double High) At(int bucket, double rollDeg)
    {
        bucket = IsLevel ? 0 : (bucket % (360 / BucketDeg) + 360 / BucketDeg) % (360 / BucketDeg);
        if (!bands.TryGetValue(bucket, out var band))
        {
            var heading = new Heading(bucket * BucketDeg, 0, rollDeg);
            band = (LowestWithAtMost(heading, task.Foreground.Most), LowestWithAtMost(heading, task.Foreground.Least));
            bands.Add(bucket, band);
        }

        return band;
    }

    // The higher the camera looks, the less ground it sees: halved to a quarter of a degree.
    private double LowestWithAtMost(Heading heading, double share)
    {
        var (low, high) = (AimSearch.LowestAxisDeg, AimSearch.HighestAxisDeg);
        while (high - low > 0.25)
        {
            var middle = (low + high) / 2;
            if (Share(heading with { AltitudeDeg = middle }) > share) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    private double Share(Heading heading)
    {
        // Over a level skyline it does not matter where the camera turns.
        if (IsLevel && shares.TryGetValue((heading.AltitudeDeg, heading.RollDeg), out var known)) return known;
        var share = FrameSkyline.ForegroundShare(task.Frame, new CameraPose(heading, task.Frame.FocalLengthMm), task.Horizon);
        if (IsLevel) shares.Add((heading.AltitudeDeg, heading.RollDeg), share);
        return share;
    }
}
