using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;

namespace NightWatch.Planning.SkyBrightness;

/// <summary>How much brighter the Moon makes the sky at the subject.</summary>
internal static class MoonJudge
{
    /// <summary>Its share in the choice of the run.</summary>
    public static RunScale Scale(SkyTrack above, Limits limits) => Cells(above, limits).Scale();

    /// <summary>Its finding over a run.</summary>
    public static Reason Of(SkyTrack above, MoonEvents moon, Limits limits, NightGrid grid, Run run)
    {
        var worst = Cells(above, limits).Over(grid, run);
        var most = worst.Value ?? throw new InvalidOperationException("The Moon's place is always known.");
        return new MoonLight(worst.Severity, worst.When, moon.IlluminatedFraction, most, worst.At, limits.MoonBrighteningMag)
        {
            Mend = worst.Severity == Severity.Ok ? null : new Mend.MoonDown(MoonTurn.Of(moon)),
        };
    }

    private static WorstCells Cells(SkyTrack above, Limits limits) =>
        new(above.MoonBrighteningMag, limits.MoonBrighteningMag);
}
