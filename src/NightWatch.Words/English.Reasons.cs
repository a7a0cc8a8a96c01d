using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Power;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Subjects;

namespace NightWatch.Words;

// What each reason found.
public sealed partial class English
{
    private const string ThunderRule =
        "Thunder means shelter in a building or a car, rig lowered, until 30 minutes after the last thunder.";

    private static readonly string[] Winds = ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"];

    /// <inheritdoc/>
    public string Of(Reason reason, Speech s) => reason switch
    {
        ThunderChance r => Thunder(r, s),
        ThunderNotKnown { Severity: Severity.Ok } =>
            "The feed gives no probability of thunder for these hours; it has no precipitation or next to no convective energy throughout.",
        ThunderNotKnown => $"The probability of thunder is not known for all of the run, and nothing else rules it out. {ThunderRule}",
        InHarmsWay r => Of(r.Caution, s),
        RunLength r => Length(r, s),
        CloudMean r => Cloud(r, s),
        CloudNotKnown => "Cloud is not known for the hours of the run.",
        RainAmount r => Rain(r, s),
        RainNotKnown => "Precipitation is not known for all of the run.",
        RainChance r =>
            $"Precipitation is at most {s.Percent(r.Probability)} likely, around {s.Clock.Time(r.At)}; {CautionAndStop(s.Percent(r.Limits.Caution), s.Percent(r.Limits.Stop))}.",
        RainChanceNotKnown { Severity: Severity.Ok } =>
            $"The feed gives no probability of precipitation for these hours; its amount is {s.Units.Rate(0)} throughout.",
        RainChanceNotKnown => "The probability of precipitation is not known for all of the run, and the amount does not rule it out.",
        Gusts r =>
            $"Gusts reach {Speed(r.GustMps, s)} around {s.Clock.Time(r.At)}; {CautionAndStop(Speed(r.LimitsMps.Caution, s), Speed(r.LimitsMps.Stop, s))}.",
        GustsFromMeanWind r =>
            $"The feed gives no gusts for these hours; from its mean wind of {Speed(r.WindMps, s)} they are put at {Speed(r.GustMps, s)}; a caution from {Speed(r.LimitsMps.Caution, s)}.",
        WindNotKnown => "Wind is not known for all of the run.",
        FogShare r => Fog(r, s),
        FogRuledOut r =>
            $"The feed gives neither fog nor visibility for these hours; the air stays at least {s.Units.Figure(r.DryByK, Unit.Kelvin)} above its dew point.",
        FogNotKnown => "Fog is not known for all of the run, and the air is not dry enough to rule it out.",
        MoonLight r => Moon(r, s),
        SiteGlow r => Glow(r, s),
        NeverDark r =>
            $"The night does not get dark: the Sun sinks only to {s.OneDecimal(r.LowestSunDeg)}° (around {s.Clock.Time(r.At)}); {s.Number(r.LimitDeg)}° is dark.",
        DewNotKnown => "Temperature, dew point, cloud or wind is not known for all of the run, so dew cannot be ruled out.",
        LensStaysDry r => $"The lens stays at least {Apart(r.BareMarginK, s)} above its dew point; dew is not expected.",
        DewOnBareLens r =>
            $"{Deposit(r.IsFrost)} settles on an unheated lens from {s.Clock.Time(r.Onset)}; it comes {Apart(-r.MarginK, s)} below its dew point.",
        DewHeldOff r => $"{WouldSettle(r.IsFrost, r.Onset, s)}; the heater of {s.Number(r.HeaterW)} W keeps it off.",
        DewAfterHeater r =>
            $"{WouldSettle(r.IsFrost, r.Onset, s)}; the heater of {s.Number(r.HeaterW)} W keeps it off, but its battery is empty at {s.Clock.Time(r.Empty)}.",
        DewThroughHeater r =>
            $"{WouldSettle(r.IsFrost, r.Onset, s)}, and the heater of {s.Number(r.HeaterW)} W holds it off only until {s.Clock.Time(r.Until)}.",
        GroundNotKnown r => UnknownGround(r),
        GroundWetness r => Ground(r, s),
        InFrame r => Frame(r, s),
        SubjectTooLow { CulminationDeg: { } altitude } r =>
            $"{Name(r.Subject, s)} does not clear the skyline and {s.Number(r.LimitDeg)}°: it culminates at {s.OneDecimal(altitude)}°.",
        SubjectTooLow r => $"{Name(r.Subject, s)} does not clear the skyline and {s.Number(r.LimitDeg)}° this night.",
        NeverUpInTheDark r => NeverTogether(r, s),
        SkyWashedOut r => WashedOut(r, s),
        SkyLevelHeld r => SkyLevel(r, s),
        PacksInUnknownCold r => $"The sequence needs {s.Number(r.NeedWh)} Wh; what the packs give depends on the cold, which is not known.",
        PacksTooCold r => $"Below {s.Units.Air(r.LeastC)} the packs are not to be relied on: {Packs(r.ColdestC, r.AvailableWh, r.NeedWh, s)}.",
        PacksRunOut r => $"The packs last until {s.Clock.Time(r.Empty)}: {Packs(r.ColdestC, r.AvailableWh, r.NeedWh, s)}.",
        PacksLast { HasReserve: true } r => $"Batteries are enough: {Packs(r.ColdestC, r.AvailableWh, r.NeedWh, s)}.",
        PacksLast r => $"Batteries just last, without the reserve of a quarter: {Packs(r.ColdestC, r.AvailableWh, r.NeedWh, s)}.",
        CardRoom r => Cards(r, s),
        SecondForecast r => Second(r, s),
        NoForecast => "There is no forecast; the sky is right but the weather is unknown.",
        ForecastAge r => Age(r.AgeH, r.LimitH, s),
        CoarseForecast r =>
            $"The forecast has only a value every few hours for this night, too coarse to place the edge of a cloud. {Age(r.AgeH, r.LimitH, s)}",
        TooFarAhead r =>
            $"The night is {s.Number(r.AheadH / 24)} days away; that far cloud is forecast no better than by the climate, so this is an outlook only. {Age(r.AgeH, r.AgeLimitH, s)}",
        Recorded r => r.Text,
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Accepted: one of the cases of a reason."),
    };

    private static string CautionAndStop(string caution, string stop) => $"a caution from {caution}, a no-go from {stop}";

    private static string Speed(double mps, Speech s) => s.Units.Figure(mps, Unit.MetresPerSecond);

    private static string Apart(double kelvin, Speech s) => s.Units.Figure(kelvin, Unit.Kelvin);

    private static string Thunder(ThunderChance r, Speech s)
    {
        var text = $"Thunder is at most {s.Percent(r.Probability)} likely, around {s.Clock.Time(r.At)}; "
            + $"{CautionAndStop(s.Percent(r.Limits.Caution), s.Percent(r.Limits.Stop))}.";
        return r.Severity == Severity.Ok ? text : $"{text} {ThunderRule}";
    }

    private static string Length(RunLength r, Speech s)
    {
        var (length, least) = (s.Clock.Length(r.Run.Duration), s.Clock.Length(NodaTime.Duration.FromMinutes(r.LeastMin)));
        return r.Severity == Severity.Ok
            ? $"Dark with the subject up for {length}, {Span(r.Run, s)}; at least {least} are needed."
            : $"Dark with the subject up for only {length}, {Span(r.Run, s)}; {least} are needed.";
    }

    private static string Cloud(CloudMean r, Speech s)
    {
        var when = r.When is { } run ? $" {Span(run, s)}" : "";
        var text = $"Cloud averages {s.Percent(r.Mean)}{when}, at most {s.Percent(r.Most)} at {s.Clock.Time(r.MostAt)}; "
            + $"a go up to {s.Percent(r.Limits.Caution)}, a no-go from {s.Percent(r.Limits.Stop)}.";
        return r.UnknownShare > 0 ? $"{text} It is not known for {s.Percent(r.UnknownShare)} of the run." : text;
    }

    private static string Rain(RainAmount r, Speech s)
    {
        var (most, limit) = (s.Units.Rate(r.MmPerH), s.Units.Rate(r.LimitMmPerH));
        return r.Severity == Severity.Ok
            ? $"No precipitation to speak of: at most {most}, below {limit}."
            : $"Precipitation of {most}{(r.When is { } when ? $" {Span(when, s)}" : "")}; a no-go from {limit}.";
    }

    private static string Fog(FogShare r, Speech s) =>
        $"Fog covers {s.Percent(r.Share)} of the time and area{(r.When is { } when ? $" {Span(when, s)}" : "")}; "
        + $"{CautionAndStop(s.Percent(r.Limits.Caution), s.Percent(r.Limits.Stop))}.";

    private static string Moon(MoonLight r, Speech s) => r.BrighteningMag <= 0
        ? $"The Moon, {s.Percent(r.LitFraction)} lit, adds no light{(r.When is { } when ? $" {Span(when, s)}" : "")}."
        : $"The Moon, {s.Percent(r.LitFraction)} lit, brightens the sky at the subject by up to {Magnitudes(r.BrighteningMag, s)} around "
            + $"{s.Clock.Time(r.At)}; {CautionAndStop(Magnitudes(r.LimitsMag.Caution, s), Magnitudes(r.LimitsMag.Stop, s))}.";

    private static string Magnitudes(double mag, Speech s) => $"{s.OneDecimal(mag)} mag";

    private static string Glow(SiteGlow r, Speech s)
    {
        var zenith = r.IsMeasured
            ? $"The moonless sky was measured at {s.OneDecimal(r.ZenithMag)} mag/arcsec² overhead (±0.1)."
            : $"The moonless sky is estimated at {s.OneDecimal(r.ZenithMag)} mag/arcsec² overhead ({s.OneDecimal(r.BrightestMag)} to {s.OneDecimal(r.DarkestMag)}) from the towns around; measure it once and enter it.";
        var text = $"{zenith} {Towns(r, s)}";
        return r.Contrast is { } contrast
            ? $"{text} The subject stands out at {Percents(contrast.Least, contrast.Best, s)} of its contrast overhead under a natural sky, best at {s.Clock.Time(contrast.BestAt)}."
            : text;
    }

    private static string Towns(SiteGlow r, Speech s)
    {
        if (r.Strongest is not { } dome) return "No town lights the horizon.";
        var text = $"Strongest glow: {dome.Town}, {s.Units.Figure(dome.DistanceKm, Unit.Kilometres)} to the {Winds[(int)Math.Round(dome.AzimuthDeg / 22.5) % Winds.Length]}";
        if (dome is { LeastApartDeg: { } apart, NearestAt: { } at })
            text += $", {s.Number(Math.Round(apart))}° of azimuth from the subject at the nearest ({s.Clock.Time(at)})";
        return r.MostTownGlowMag is { } most
            ? $"{text}; towns brighten the sky at {(r.IsOfZenith ? "the zenith" : "the subject")} by up to {s.OneDecimal(most)} mag."
            : $"{text}.";
    }

    private static string Deposit(bool isFrost) => isFrost ? "Frost" : "Dew";

    private static string WouldSettle(bool isFrost, NodaTime.Instant onset, Speech s) => $"{Deposit(isFrost)} would settle from {s.Clock.Time(onset)}";

    private static string UnknownGround(GroundNotKnown r)
    {
        if (r.Rain.Mm is not null) return "How wet the ground is cannot be told: the rain until the night is not known.";
        var text = $"How wet the ground is cannot be told: the rain is known for {r.Rain.KnownHours} of the last {r.Rain.WindowHours} hours";
        return r.Rain.KnownHours > 0 ? $"{text}; the record grows with every forecast." : $"{text}.";
    }

    private static string Ground(GroundWetness r, Speech s)
    {
        var arrival = r.AtArrival == r.AtStart ? "" : $", {Word(r.AtArrival)} at arrival";
        var text = $"The {Word(r.Ground)} is {Word(r.AtStart)} at the first frame ({s.Units.Figure(r.WaterMm ?? 0, Unit.Millimetres)} of water){arrival}.";
        return r.DryFrom is { } dry ? $"{text} It is dry from {s.Clock.Time(dry)}."
            : r.AtStart == GroundState.Dry ? text
            : $"{text} It does not dry by morning.";
    }

    private static string Word(GroundState state) => state switch
    {
        GroundState.Wet => "wet",
        GroundState.Damp => "damp",
        GroundState.Dry => "dry",
        _ => "of unknown wetness",
    };

    private static string Word(GroundKind kind) => kind switch
    {
        GroundKind.Rock => "rock",
        GroundKind.Gravel => "gravel",
        GroundKind.Sand => "sand",
        GroundKind.Clay => "clay",
        _ => "grass",
    };

    private static string Frame(InFrame r, Speech s)
    {
        var when = r.In is { } seen ? Span(seen, s) : "at no time";
        var last = r.IsProgrammed ? $", {s.Percent(r.ForegroundAtEnd)} of the last" : "";
        var ground = $"{s.Percent(r.ForegroundAtStart)} of the first frame is below the skyline{last}";
        if (!r.IsProgrammed)
            return $"A still camera at {Aim(r.Start, s)} has the subject in the frame {when} ({s.Percent(r.ShareIn)} of the frames); {ground}.";
        return r.ShareIn >= 1
            ? $"The subject stays in the frame through the whole move; {ground}."
            : $"The subject is in the frame {when}, {s.Percent(r.ShareIn)} of the frames; {ground}.";
    }

    private static string Aim(Heading heading, Speech s) => $"azimuth {s.Number(heading.AzimuthDeg)}°, altitude {s.Number(heading.AltitudeDeg)}°";

    private static string NeverTogether(NeverUpInTheDark r, Speech s)
    {
        var text = $"{Name(r.Subject, s)} is above {s.Number(r.LeastAltitudeDeg)}° only {Span(r.Up, s)}, the sky is dark {Span(r.Dark, s)}";
        return r.MarginsMin > 0 ? $"{text} less the watch's margins of {s.Number(r.MarginsMin)} min." : $"{text}.";
    }

    private static string Name(Subject subject, Speech s) => subject switch
    {
        Subject.GalacticCore => "The galactic core",
        Subject.GalacticBand band => $"The galactic band at longitude {s.Number(band.LongitudeDeg)}°",
        Subject.FixedPoint point => point.Name,
        _ => "The sky",
    };

    private static string WashedOut(SkyWashedOut r, Speech s)
    {
        var sound = r.LastSoundShot is { } shot ? $"frame {shot} is the last sound one" : "already in the first frame";
        return $"In frames of {s.Number(r.ExposureS)} s at ISO {r.Iso} the sky passes {s.Percent(r.LimitHeld)} of saturation from {s.Clock.Time(r.From)} on, "
            + $"lifted by {Word(r.LiftedBy)}; {sound}.";
    }

    private static string SkyLevel(SkyLevelHeld r, Speech s)
    {
        var text = $"In frames of {s.Number(r.ExposureS)} s at ISO {r.Iso} the sky stands at {Percents(r.Least, r.Most, s)} of saturation, below {s.Percent(r.LimitHeld)}";
        return r.PastLimitFrom is { } past ? $"{text}; after the last frame {Word(r.LiftedBy)} lifts it past that at {s.Clock.Time(past)}." : $"{text}.";
    }

    private static string Word(SkyLift? lift) => lift == SkyLift.Moon ? "the Moon" : "twilight";

    private static string Packs(double coldestC, double availableWh, double needWh, Speech s) =>
        $"at {s.Units.Air(coldestC)} the packs give {s.Number(availableWh)} Wh of the {s.Number(needWh)} Wh needed";

    private static string Cards(CardRoom r, Speech s)
    {
        var need = $"{r.Shots} frames of {s.Number(r.RawFileMb)} MB need {s.OneDecimal(r.NeedGb)} GB";
        return r.Full is { } full
            ? $"{need}, but the cards hold only {s.Number(r.RoomGb)} GB: they are full at {s.Clock.Time(full)}, after {r.ShotsThatFit} frames."
            : $"{need}; the cards hold {s.Number(r.RoomGb)} GB.";
    }

    private static string Second(SecondForecast r, Speech s)
    {
        var first = r.FirstCloud is { } cloud ? $" where the first has {s.Percent(cloud)}" : "";
        var finds = r.IsUsable ? "finds a usable run" : "finds no usable run";
        return $"The second feed has {s.Percent(r.Cloud)} cloud in the run{first}; on its own it {finds}.";
    }

    private static string Age(double ageH, double limitH, Speech s) => ageH > limitH
        ? $"The forecast is {s.Number(ageH)} h old, and no newer one could be had; up to {s.Number(limitH)} h it is trusted."
        : $"The forecast is {s.Number(ageH)} h old.";
}
