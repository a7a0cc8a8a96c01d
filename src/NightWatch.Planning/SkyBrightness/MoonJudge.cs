using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Planning.SkyBrightness;

/// <summary>How much brighter the Moon makes the sky at the subject, and what that takes from the frames.</summary>
internal static class MoonJudge
{
    /// <summary>An eclipse is told from a tenth of the sunlight on.</summary>
    private const double EclipsedBelow = 0.9;

    /// <summary>Its finding over a run.</summary>
    /// <param name="above">The sky.</param>
    /// <param name="moon">Its rise and set.</param>
    /// <param name="severity">Of the share it leaves.</param>
    /// <param name="lostShare">Share of the frames' worth it takes over the run.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="run">The run.</param>
    public static Reason Of(SkyTrack above, MoonEvents moon, Severity severity, double lostShare, NightGrid grid, Run run)
    {
        var (most, isEclipsed) = (run.First, false);
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            if (above.MoonBrighteningMag[cell] > above.MoonBrighteningMag[most]) most = cell;
            var there = above.Steps[cell].Moon;
            isEclipsed |= there.SunlightShare < EclipsedBelow && there.Direction.AltitudeDeg > 0;
        }

        var at = Instant.Max(grid.At(most), run.Span.Start);
        return new MoonLight(severity, run.Span, moon.IlluminatedFraction, above.MoonBrighteningMag[most], at)
        {
            LostShare = lostShare,
            IsEclipsed = isEclipsed,
            Mend = severity == Severity.Ok ? null : new Mend.MoonDown(MoonTurn.Of(moon)),
        };
    }
}
