using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Sky.Subjects;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>One quantity along the night, to be read out at any step of its grid.</summary>
/// <param name="Path">Its place in a condition of the plan document: "cloud", "subject.altitudeDeg".</param>
/// <param name="Name">What it is.</param>
/// <param name="Measure">How its figures are said.</param>
/// <param name="IsKey">Among the few that are said first.</param>
/// <param name="Values">The plan's own, one a step; null is unknown.</param>
public sealed record NightReading(string Path, string Name, Measure Measure, bool IsKey, IReadOnlyList<double?> Values)
{
    /// <summary>The figure at a step, in words.</summary>
    public string At(int step) => Values[step] is { } value ? Measure.Say(value) : "unknown";
}

/// <summary>Every quantity of a plan's conditions that means something for its watch, in the subscriber's units.</summary>
public static class NightReadings
{
    /// <summary>In the order of reading; what is unknown all night stays, and says so.</summary>
    public static IReadOnlyList<NightReading> Of(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var units = Speech.To(plan.Watch).Units;
        Measure percent = units.Of(Unit.Fraction), degrees = units.Of(Unit.Degrees), speed = units.Of(Unit.MetresPerSecond), air = units.Of(Unit.Celsius), apart = units.Of(Unit.Kelvin);
        var rain = units.Of(Unit.Millimetres);
        List<NightReading> readings = [];
        Add("cloud", "Cloud", percent, step => step.Cloud, isKey: true);
        Add("lowCloud", "Low cloud", percent, step => step.LowCloud);
        Add("mediumCloud", "Medium cloud", percent, step => step.MediumCloud);
        Add("highCloud", "High cloud", percent, step => step.HighCloud);
        Add("rainMmPerH", "Rain", rain with { Decimals = rain.Decimals + 1, Suffix = rain.Suffix + "/h" }, step => step.RainMmPerH, isKey: true);
        Add("rainProbability", "Chance of rain", percent, step => step.RainProbability);
        Add("thunderProbability", "Chance of thunder", percent, step => step.ThunderProbability);
        Add("windMps", "Wind", speed, step => step.WindMps, isKey: true);
        Add("gustMps", "Gusts", speed, step => step.GustMps);
        Add("airC", "Air", air with { Decimals = 1 }, step => step.AirC, isKey: true);
        Add("dewPointC", "Dew point", air with { Decimals = 1 }, step => step.DewPointC);
        Add("humidity", "Humidity", percent, step => step.Humidity);
        Add("fog", "Fog", percent, step => step.Fog);
        Add("visibilityM", "Visibility", units.Of(Unit.Kilometres) is var far ? far with { Scale = far.Scale / 1000, Decimals = 1 } : far, step => step.VisibilityM);
        Add("lensDewMarginK", "Lens above its dew point", apart, step => step.LensDewMarginK, isKey: true);
        if (plan.Watch.Kit.DewHeaterW > 0) Add("lensHeatedDewMarginK", "With the heater", apart, step => step.LensHeatedDewMarginK);
        Add("lensC", "Front of the lens", air with { Decimals = 1 }, step => step.LensC);
        if (plan.Watch.Subject is not Subject.Stars)
        {
            Add("subject.altitudeDeg", "Subject, altitude", degrees, step => step.Subject?.AltitudeDeg, isKey: true);
            Add("subject.azimuthDeg", "Subject, azimuth", degrees, step => step.Subject?.AzimuthDeg);
        }

        Add("moon.altitudeDeg", "Moon, altitude", degrees, step => step.Moon.AltitudeDeg, isKey: true);
        Add("moon.azimuthDeg", "Moon, azimuth", degrees, step => step.Moon.AzimuthDeg);
        Add("moonBrighteningMag", "Moonlight added", units.Plain(2, " mag"), step => step.MoonBrighteningMag);
        Add("sunAltitudeDeg", "Sun, altitude", degrees, step => step.SunAltitudeDeg);
        Add("skyMag", "Sky", units.Plain(2, " mag/arcsec²"), step => step.SkyMag);
        Add("contrast", "Contrast", percent, step => step.Contrast);
        if (plan.Sequence is not null) Add("skyShare", "Sky in the frame", percent, step => step.SkyShare);
        return readings;

        void Add(string path, string name, Measure measure, Func<ConditionStep, double?> value, bool isKey = false) =>
            readings.Add(new NightReading(path, name, measure, isKey, [.. plan.Conditions.Select(value)]));
    }
}
