using NightWatch.Planning.Camera;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Worth;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Nights;

/// <summary>Puts sky, weather and what they do to lens and frame side by side, for tables and charts.</summary>
internal static class ConditionSteps
{
    /// <summary>
    /// 0.04″ of direction, far below what is known of anything here: the steps are looked at, nothing is computed from them.
    /// </summary>
    private const int Decimals = 5;

    /// <summary>One record a cell of the grid.</summary>
    public static ConditionStep[] Along(NightEvidence night, LensTrack lens, ShootingPlan? plan)
    {
        var sequence = plan?.Sequence;
        var kept = plan?.Kit ?? KitWorth.Whole(night.Grid.Count);
        var (grid, sky, weather, kit) = (night.Grid, night.Above, night.Weather, night.Watch.Kit);
        var steps = new ConditionStep[grid.Count];
        for (var cell = 0; cell < steps.Length; cell++)
        {
            var above = sky.Steps[cell];
            steps[cell] = new ConditionStep
            {
                At = grid.At(cell),
                SunAltitudeDeg = Rounded(above.SunAltitudeDeg),
                Moon = Rounded(above.Moon.Direction),
                Subject = above.Subject is { } subject ? Rounded(subject) : null,
                SkyMag = Rounded(above.Light.Mag),
                Contrast = above.Contrast(night.Glow.Extinction) is { } contrast ? Rounded(contrast) : null,
                MoonBrighteningMag = Rounded(sky.MoonBrighteningMag[cell]),
                SkyShare = sequence is null
                    ? null
                    : Rounded(SkyExposure.Share(above.Light.CandelaPerM2, kit.FNumber, sequence.ExposureS, sequence.Iso)),
                Worth = WorthAt(night, kept, cell),
                Cloud = Known(weather.Cloud[cell]),
                LowCloud = Known(weather.LowCloud[cell]),
                MediumCloud = Known(weather.MediumCloud[cell]),
                HighCloud = Known(weather.HighCloud[cell]),
                AirC = Known(weather.AirC[cell]),
                DewPointC = Known(weather.DewPointC[cell]),
                Humidity = Known(weather.Humidity[cell]),
                WindMps = Known(weather.WindMps[cell]),
                GustMps = Known(weather.GustMps[cell]),
                RainMmPerH = Known(weather.Rain[cell]),
                RainProbability = Known(weather.RainProbability[cell]),
                Fog = Known(weather.Fog[cell]),
                VisibilityM = Known(weather.VisibilityM[cell]),
                ThunderProbability = Known(weather.Thunder[cell]),
                LensC = Known(lens.ElementC[cell]),
                LensDewMarginK = Known(lens.MarginK[cell]),
                LensHeatedDewMarginK = Known(lens.HeatedMarginK[cell]),
            };
        }

        return steps;
    }

    private static StepWorth WorthAt(NightEvidence night, KitWorth kit, int cell)
    {
        var ofKit = kit.Framed[cell] * kit.LensClear[cell] * kit.Powered[cell] * kit.Stored[cell] * kit.Exposed[cell];
        return new StepWorth(
            Known(ofKit == 0 ? 0 : night.Worth[cell] * ofKit),
            Known(night.Shares.Clear[cell]),
            Rounded(night.Dark[cell]),
            Rounded(night.Shares.Steady[cell]),
            night.Shares.Dry[cell],
            kit.Framed[cell],
            Rounded(kit.LensClear[cell]),
            Rounded(kit.Powered[cell]),
            Rounded(kit.Stored[cell]),
            kit.Exposed[cell]);
    }

    private static double? Known(double value) => double.IsNaN(value) ? null : Rounded(value);

    private static Horizontal Rounded(Horizontal direction) => new(Rounded(direction.AltitudeDeg), Rounded(direction.AzimuthDeg));

    private static double Rounded(double value) => Math.Round(value, Decimals);
}
