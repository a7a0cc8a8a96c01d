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
/// <param name="Unknown">How an unknown figure is said.</param>
public sealed record NightReading(string Path, string Name, Measure Measure, bool IsKey, IReadOnlyList<double?> Values, string Unknown)
{
    /// <summary>The figure at a step, in words.</summary>
    public string At(int step) => Values[step] is { } value ? Measure.Say(value) : Unknown;
}

/// <summary>Every quantity of a plan's conditions that means something for its watch, in the subscriber's units.</summary>
public static class NightReadings
{
    /// <summary>In the order of reading; what is unknown all night stays, and says so.</summary>
    public static IReadOnlyList<NightReading> Of(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var speech = Speech.To(plan.Watch);
        var (units, language) = (speech.Units, speech.Language);
        Measure percent = units.Of(Unit.Fraction), degrees = units.Of(Unit.Degrees);
        Measure speed = units.Of(Unit.MetresPerSecond), apart = units.Of(Unit.Kelvin);
        List<NightReading> readings = [];
        Add("worth.value", Quantity.Worth, percent, step => step.Worth.Value, isKey: true);
        Add("cloud", Quantity.Cloud, percent, step => step.Cloud, isKey: true);
        Add("lowCloud", Quantity.LowCloud, percent, step => step.LowCloud);
        Add("mediumCloud", Quantity.MediumCloud, percent, step => step.MediumCloud);
        Add("highCloud", Quantity.HighCloud, percent, step => step.HighCloud);
        Add("rainMmPerH", Quantity.Rain, units.Rates, step => step.RainMmPerH, isKey: true);
        Add("rainProbability", Quantity.RainChance, percent, step => step.RainProbability);
        Add("thunderProbability", Quantity.ThunderChance, percent, step => step.ThunderProbability);
        Add("windMps", Quantity.Wind, speed, step => step.WindMps, isKey: true);
        Add("gustMps", Quantity.Gusts, speed, step => step.GustMps);
        Add("airC", Quantity.Air, units.Airs, step => step.AirC, isKey: true);
        Add("dewPointC", Quantity.DewPoint, units.Airs, step => step.DewPointC);
        Add("humidity", Quantity.Humidity, percent, step => step.Humidity);
        Add("fog", Quantity.Fog, percent, step => step.Fog);
        Add("visibilityM", Quantity.Visibility, units.Visibilities, step => step.VisibilityM);
        Add("lensDewMarginK", Quantity.LensMargin, apart, step => step.LensDewMarginK, isKey: true);
        if (plan.Watch.Kit.DewHeaterW > 0) Add("lensHeatedDewMarginK", Quantity.HeatedMargin, apart, step => step.LensHeatedDewMarginK);
        Add("lensC", Quantity.LensFront, units.Airs, step => step.LensC);
        if (plan.Watch.Subject is not Subject.Stars)
        {
            Add("subject.altitudeDeg", Quantity.SubjectAltitude, degrees, step => step.Subject?.AltitudeDeg, isKey: true);
            Add("subject.azimuthDeg", Quantity.SubjectAzimuth, degrees, step => step.Subject?.AzimuthDeg);
        }

        Add("moon.altitudeDeg", Quantity.MoonAltitude, degrees, step => step.Moon.AltitudeDeg, isKey: true);
        Add("moon.azimuthDeg", Quantity.MoonAzimuth, degrees, step => step.Moon.AzimuthDeg);
        Add("moonBrighteningMag", Quantity.MoonlightAdded, units.AddedLight, step => step.MoonBrighteningMag);
        Add("sunAltitudeDeg", Quantity.SunAltitude, degrees, step => step.SunAltitudeDeg);
        Add("skyMag", Quantity.Sky, units.SkyBrightness, step => step.SkyMag);
        Add("contrast", Quantity.Contrast, percent, step => step.Contrast);
        if (plan.Sequence is not null) Add("skyShare", Quantity.SkyInFrame, percent, step => step.SkyShare);
        return readings;

        void Add(string path, Quantity quantity, Measure measure, Func<ConditionStep, double?> value, bool isKey = false) =>
            readings.Add(
                new NightReading(path, language.Of(quantity), measure, isKey, [.. plan.Conditions.Select(value)], language.Unknown));
    }
}
