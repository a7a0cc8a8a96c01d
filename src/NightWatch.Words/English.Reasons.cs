using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Nights;
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

    private static readonly string[] Winds =
    ["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"];

    /// <inheritdoc/>
    public string Of(Reason reason, Speech speech) =>
        reason switch
        {
            ThunderChance r => Thunder(r, speech),
            ThunderNotKnown { Severity: Severity.Ok } =>
                "The feed gives no probability of thunder for these hours; it has no precipitation or next to no convective energy " +
                "throughout.",
            ThunderNotKnown => $"The probability of thunder is not known for all of the run, and nothing else rules it out. {ThunderRule}",
            InHarmsWay r => Of(r.Caution, speech),
            RunLength r => Length(r, speech),
            CloudMean r => Cloud(r, speech),
            CloudNotKnown => "Cloud is not known for the hours of the run.",
            RainAmount r => Rain(r, speech),
            RainNotKnown => "Precipitation is not known for all of the run.",
            RainChance r =>
                $"Precipitation is at most {speech.Percent(r.Probability)} likely, around {speech.Clock.Time(r.At)}; a caution from " +
                $"{speech.Percent(r.Limits.Caution)}.",
            RainChanceNotKnown { Severity: Severity.Ok } =>
                $"The feed gives no probability of precipitation for these hours; its amount is {speech.Units.Rate(0)} throughout.",
            RainChanceNotKnown => "The probability of precipitation is not known for all of the run, and the amount does not rule it out.",
            Gusts r =>
                $"Gusts reach {Speed(r.GustMps, speech)} around {speech.Clock.Time(r.At)}; " +
                $"{FullAndNothing(Speed(r.LimitsMps.Caution, speech), Speed(r.LimitsMps.Stop, speech))}.",
            GustsFromMeanWind r =>
                $"The feed gives no gusts for these hours; from its mean wind of {Speed(r.WindMps, speech)} they are put at " +
                $"{Speed(r.GustMps, speech)}; a frame counts in full up to {Speed(r.LimitsMps.Caution, speech)}.",
            WindNotKnown => "Wind is not known for all of the run.",
            FogShare r => Fog(r, speech),
            FogRuledOut r =>
                $"The feed gives neither fog nor visibility for these hours; the air stays at least " +
                $"{speech.Units.Figure(r.DryByK, Unit.Kelvin)} above its dew point.",
            FogNotKnown => "Fog is not known for all of the run, and the air is not dry enough to rule it out.",
            MoonLight r => Moon(r, speech),
            SiteGlow r => Glow(r, speech),
            NeverDark r =>
                $"The night does not get dark: the Sun sinks only to {speech.OneDecimal(r.LowestSunDeg)}° (around " +
                $"{speech.Clock.Time(r.At)}); {speech.Number(r.LimitDeg)}° is dark.",
            DewNotKnown => "Temperature, dew point, cloud or wind is not known for all of the run, so dew cannot be ruled out.",
            LensStaysDry { BareMarginK: < NightSummary.ClosestToDewK } r =>
                $"The lens stays only {Apart(r.BareMarginK, speech)} above its dew point, and forecasts err by more: dew is close.",
            LensStaysDry r => $"The lens stays at least {Apart(r.BareMarginK, speech)} above its dew point; dew is not expected.",
            DewOnBareLens r =>
                $"{Deposit(r.IsFrost)} settles on an unheated lens from {speech.Clock.Time(r.Onset)}; it comes " +
                $"{Apart(-r.MarginK, speech)} below its dew point.",
            DewHeldOff r => $"{WouldSettle(r.IsFrost, r.Onset, speech)}; the heater of {speech.Number(r.HeaterW)} W keeps it off.",
            DewAfterHeater r =>
                $"{WouldSettle(r.IsFrost, r.Onset, speech)}; the heater of {speech.Number(r.HeaterW)} W keeps it off, but " +
                $"{(r.IsOnPacks ? "the packs it hangs on are" : "its battery is")} empty at {speech.Clock.Time(r.Empty)}.",
            DewThroughHeater r =>
                $"{WouldSettle(r.IsFrost, r.Onset, speech)}, and the heater of {speech.Number(r.HeaterW)} W holds it off only until " +
                $"{speech.Clock.Time(r.Until)}.",
            GroundNotKnown r => UnknownGround(r),
            GroundWetness r => Ground(r, speech),
            InFrame r => Frame(r, speech),
            SubjectTooLow { CulminationDeg: { } altitude } r =>
                $"{Name(r.Subject, speech)} does not clear the skyline and {speech.Number(r.LimitDeg)}°: it culminates at " +
                $"{speech.OneDecimal(altitude)}°.",
            SubjectTooLow r => $"{Name(r.Subject, speech)} does not clear the skyline and {speech.Number(r.LimitDeg)}° this night.",
            NeverUpInTheDark r => NeverTogether(r, speech),
            SkyWashedOut r => WashedOut(r, speech),
            SkyLevelHeld r => SkyLevel(r, speech),
            PacksInUnknownCold r =>
                $"The sequence needs {speech.Number(r.NeedWh)} Wh; what the packs give depends on the cold, which is not known.",
            PacksTooCold r =>
                $"Below {speech.Units.Air(r.LeastC)} the packs are not to be relied on: " +
                $"{Packs(r.ColdestC, r.AvailableWh, r.NeedWh, speech)}.",
            PacksRunOut r => $"The packs last until {speech.Clock.Time(r.Empty)}: {Packs(r.ColdestC, r.AvailableWh, r.NeedWh, speech)}.",
            PacksLast { HasReserve: true } r => $"Batteries are enough: {Packs(r.ColdestC, r.AvailableWh, r.NeedWh, speech)}.",
            PacksLast r => $"Batteries just last, without the reserve of a quarter: {Packs(r.ColdestC, r.AvailableWh, r.NeedWh, speech)}.",
            CardRoom r => Cards(r, speech),
            SecondForecast r => Second(r, speech),
            UsableNight r => Chance(r, speech),
            NoForecast => "There is no forecast; the sky is right but the weather is unknown.",
            ForecastAge r => Age(r.AgeH, r.LimitH, speech),
            CoarseForecast r =>
                $"The forecast has only a value every few hours for this night, too coarse to place the edge of a cloud. " +
                $"{Age(r.AgeH, r.LimitH, speech)}",
            TooFarAhead r =>
                $"The night is {speech.Number(r.AheadH / 24)} days away; that far cloud is forecast no better than by the climate, so " +
                $"this is an outlook only. {Age(r.AgeH, r.AgeLimitH, speech)}",
            Recorded r => r.Text,
            _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Accepted: one of the cases of a reason."),
        };

    private static string FullAndNothing(string full, string nothing) =>
        $"a frame counts in full up to {full} and for nothing from {nothing}";

    private static string CautionAndStop(string caution, string stop) => $"a caution from {caution}, a no-go from {stop}";

    private static string Speed(double mps, Speech speech) => speech.Units.Figure(mps, Unit.MetresPerSecond);

    private static string Apart(double kelvin, Speech speech) => speech.Units.Figure(kelvin, Unit.Kelvin);

    private static string Thunder(ThunderChance r, Speech speech)
    {
        var text = $"Thunder is at most {speech.Percent(r.Probability)} likely, around {speech.Clock.Time(r.At)}; "
            + $"{CautionAndStop(speech.Percent(r.Limits.Caution), speech.Percent(r.Limits.Stop))}.";
        return r.Severity == Severity.Ok ? text : $"{text} {ThunderRule}";
    }

    private static string Length(RunLength r, Speech speech)
    {
        var least = speech.Clock.Length(NodaTime.Duration.FromMinutes(r.LeastMin));
        if (r.UsableMin is not { } minutes)
            return $"Dark with the subject up for {speech.Clock.Length(r.Run.Duration)}, {Span(r.Run, speech)}; {least} are needed.";
        var good =
            $"{speech.Clock.Length(NodaTime.Duration.FromMinutes(Math.Floor(minutes)))} of good frames"
            + (r.IsOnceDone ? " once what must be done first is done" : "");
        return r.Severity switch
        {
            Severity.Ok => $"{good}, {Span(r.Run, speech)}; at least {least} are needed.",
            Severity.Caution when minutes < 1 => $"No good frames by the newest forecast, {Span(r.Run, speech)}; {least} are needed.",
            Severity.Caution => $"Only {good}, {Span(r.Run, speech)}; {least} are needed.",
            _ => $"The sky allows no more than {good}, {Span(r.Run, speech)}; {least} are needed.",
        };
    }

    private static string Chance(UsableNight r, Speech speech)
    {
        var text = $"The chance of a usable night is {speech.Percent(r.Probability)}";
        return r.Severity switch
        {
            Severity.Ok => $"{text}; a go is said from {speech.Percent(r.GoFrom)}.",
            Severity.Caution => $"{text}; going pays you from {speech.Percent(r.PaysFrom)}, a go is said from {speech.Percent(r.GoFrom)}.",
            _ => $"{text}; going pays you from {speech.Percent(r.PaysFrom)}.",
        };
    }

    private static string Cloud(CloudMean r, Speech speech)
    {
        var when = r.When is { } run ? $" {Span(run, speech)}" : "";
        var text = $"Cloud averages {speech.Percent(r.Mean)}{when}, at most {speech.Percent(r.Most)} at {speech.Clock.Time(r.MostAt)}; "
            + $"{FullAndNothing(speech.Percent(r.Limits.Caution), speech.Percent(r.Limits.Stop))}.";
        return r.UnknownShare > 0 ? $"{text} It is not known for {speech.Percent(r.UnknownShare)} of the run." : text;
    }

    private static string Rain(RainAmount r, Speech speech)
    {
        var (most, limit) = (speech.Units.Rate(r.MmPerH), speech.Units.Rate(r.LimitMmPerH));
        return r.Severity == Severity.Ok
            ? $"No precipitation to speak of: at most {most}, below {limit}."
            : $"Precipitation of {most}{(r.When is { } when ? $" {Span(when, speech)}" : "")}; a frame counts for nothing from {limit}.";
    }

    private static string Fog(FogShare r, Speech speech) =>
        $"Fog covers {speech.Percent(r.Share)} of the time and area{(r.When is { } when ? $" {Span(when, speech)}" : "")}; "
        + $"{FullAndNothing(speech.Percent(r.Limits.Caution), speech.Percent(r.Limits.Stop))}.";

    private static string Moon(MoonLight r, Speech speech)
    {
        var eclipse = r.IsEclipsed ? " It is eclipsed in the run." : "";
        if (r.BrighteningMag <= 0)
            return $"The Moon, {speech.Percent(r.LitFraction)} lit, adds no " +
                $"light{(r.When is { } when ? $" {Span(when, speech)}" : "")}.{eclipse}";
        if (r.BrighteningMag < LeastSaidMag) return $"The Moon, {speech.Percent(r.LitFraction)} lit, adds next to no light.{eclipse}";
        var text =
            $"The Moon, {speech.Percent(r.LitFraction)} lit, brightens the sky at the subject by up to " +
            $"{Magnitudes(r.BrighteningMag, speech)} around "
            + $"{speech.Clock.Time(r.At)}";
        return r.LostShare switch
        {
            null => $"{text}.",
            < 0.005 => $"{text}, which takes nothing from the frames.{eclipse}",
            { } lost => $"{text}; over the run it takes {speech.Percent(lost)} of the frames' worth.{eclipse}",
        };
    }

    private static string Magnitudes(double mag, Speech speech) => $"{speech.OneDecimal(mag)} mag";

    private static string Glow(SiteGlow r, Speech speech)
    {
        var zenith = r.IsMeasured
            ? $"The moonless sky was measured at {speech.OneDecimal(r.ZenithMag)} mag/arcsec² overhead (±0.1)."
            : $"The moonless sky is estimated at {speech.OneDecimal(r.ZenithMag)} mag/arcsec² overhead " +
                $"({speech.OneDecimal(r.BrightestMag)} to {speech.OneDecimal(r.DarkestMag)}) from the towns around; measure it once and " +
                "enter it.";
        var text = $"{zenith} {Towns(r, speech)}";
        if (r.Dark is { MeanShare: < 0.995 } dark)
        {
            text += $" At the subject the sky is {speech.OneDecimal(dark.DarkestMag)} mag/arcsec² at its darkest; "
                + $"a frame counts in full from {speech.OneDecimal(dark.Levels.FullMag)} and for nothing below " +
                    $"{speech.OneDecimal(dark.Levels.NothingMag)}.";
        }

        return r.Contrast is { } contrast
            ? $"{text} The subject stands out at {Percents(contrast.Least, contrast.Best, speech)} of its contrast overhead under a " +
                $"natural sky, best at {speech.Clock.Time(contrast.BestAt)}."
            : text;
    }

    private static string Towns(SiteGlow r, Speech speech)
    {
        if (r.Strongest is not { } dome) return "No town lights the horizon.";
        var text =
            $"Strongest glow: {dome.Town}, {speech.Units.Figure(dome.DistanceKm, Unit.Kilometres)} to the " +
            $"{Winds[(int)Math.Round(dome.AzimuthDeg / 22.5) % Winds.Length]}";
        if (dome is { LeastApartDeg: { } apart, NearestAt: { } at })
            text += $", {speech.Number(Math.Round(apart))}° of azimuth from the subject at the nearest ({speech.Clock.Time(at)})";
        return r.MostTownGlowMag is { } most
            ? $"{text}; towns brighten the sky at {(r.IsOfZenith ? "the zenith" : "the subject")} by up to {speech.OneDecimal(most)} mag."
            : $"{text}.";
    }

    private static string Deposit(bool isFrost) => isFrost ? "Frost" : "Dew";

    private static string WouldSettle(bool isFrost, NodaTime.Instant onset, Speech speech) =>
        $"{Deposit(isFrost)} would settle from {speech.Clock.Time(onset)}";

    private static string UnknownGround(GroundNotKnown r)
    {
        if (r.Rain.Mm is not null) return "How wet the ground is cannot be told: the rain until the night is not known.";
        var text =
            $"How wet the ground is cannot be told: the rain is known for {r.Rain.KnownHours} of the last {r.Rain.WindowHours} hours";
        return r.Rain.KnownHours > 0 ? $"{text}; the record grows with every forecast." : $"{text}.";
    }

    private static string Ground(GroundWetness r, Speech speech)
    {
        var arrival = r.AtArrival == r.AtStart ? "" : $", {Word(r.AtArrival)} at arrival";
        var text =
            $"The {Word(r.Ground)} is {Word(r.AtStart)} at the first frame ({speech.Units.Figure(r.WaterMm ?? 0, Unit.Millimetres)} of " +
            $"water){arrival}.";
        return r.DryFrom is { } dry ? $"{text} It is dry from {speech.Clock.Time(dry)}."
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

    private static string Frame(InFrame r, Speech speech)
    {
        var when = r.In is { } seen ? Span(seen, speech) : "at no time";
        var last = r.IsProgrammed ? $", {speech.Percent(r.ForegroundAtEnd)} of the last" : "";
        var ground = $"{speech.Percent(r.ForegroundAtStart)} of the first frame is below the skyline{last}";
        if (!r.IsProgrammed)
            return $"A still camera at {Aim(r.Start, speech)} has the subject in the frame {when} ({speech.Percent(r.ShareIn)} of the " +
                $"frames); {StillGround(r, speech)}.";
        return r.ShareIn >= 1
            ? $"The subject stays in the frame through the whole move; {ground}."
            : $"The subject is in the frame {when}, {speech.Percent(r.ShareIn)} of the frames; {ground}.";
    }

    private static string StillGround(InFrame r, Speech speech)
    {
        var share = $"{speech.Percent(r.ForegroundAtStart)} of it is below the skyline";
        if (r.ForegroundMissed is not { } wished) return share;
        if (r.ForegroundAtStart == 0) return "the subject stands too high for any foreground";
        var asWished = $"the {Percents(wished.Least, wished.Most, speech)} wished";
        return r.ForegroundAtStart < wished.Least
            ? $"{share}, as the subject stands too high for {asWished}"
            : $"{share}, as no heading that keeps the subject shows {asWished}";
    }

    private static string Aim(Heading heading, Speech speech) =>
        $"azimuth {speech.Number(heading.AzimuthDeg)}°, altitude {speech.Number(heading.AltitudeDeg)}°";

    private static string NeverTogether(NeverUpInTheDark r, Speech speech)
    {
        var text =
            $"{Name(r.Subject, speech)} is above {speech.Number(r.LeastAltitudeDeg)}° only {Span(r.Up, speech)}, the sky is dark " +
            $"{Span(r.Dark, speech)}";
        return r.MarginsMin > 0 ? $"{text} less the watch's margins of {speech.Number(r.MarginsMin)} min." : $"{text}.";
    }

    private static string Name(Subject subject, Speech speech) => subject switch
    {
        Subject.GalacticCore => "The galactic core",
        Subject.GalacticBand band => $"The galactic band at longitude {speech.Number(band.LongitudeDeg)}°",
        Subject.FixedPoint point => point.Name,
        _ => "The sky",
    };

    private static string WashedOut(SkyWashedOut r, Speech speech)
    {
        var sound = r.LastSoundShot is { } shot ? $"frame {shot} is the last sound one" : "already in the first frame";
        return $"In frames of {speech.Number(r.ExposureS)} s at ISO {r.Iso} the sky passes {speech.Percent(r.LimitHeld)} of saturation " +
            $"from {speech.Clock.Time(r.From)} on, "
            + $"lifted by {Word(r.LiftedBy)}; {sound}.";
    }

    private static string SkyLevel(SkyLevelHeld r, Speech speech)
    {
        var text =
            $"In frames of {speech.Number(r.ExposureS)} s at ISO {r.Iso} the sky stands at {Percents(r.Least, r.Most, speech)} of " +
            $"saturation, below {speech.Percent(r.LimitHeld)}";
        return r.PastLimitFrom is { } past
            ? $"{text}; after the last frame {Word(r.LiftedBy)} lifts it past that at {speech.Clock.Time(past)}."
            : $"{text}.";
    }

    private static string Word(SkyLift? lift) => lift == SkyLift.Moon ? "the Moon" : "twilight";

    private static string Packs(double coldestC, double availableWh, double needWh, Speech speech) =>
        $"at {speech.Units.Air(coldestC)} the packs give {speech.Number(availableWh)} Wh of the {speech.Number(needWh)} Wh needed";

    private static string Cards(CardRoom r, Speech speech)
    {
        var need = $"{r.Shots} frames of {speech.Number(r.RawFileMb)} MB need {speech.OneDecimal(r.NeedGb)} GB";
        return r.Full is { } full
            ? $"{need}, but the cards hold only {speech.Number(r.RoomGb)} GB: they are full at {speech.Clock.Time(full)}, after " +
                $"{r.ShotsThatFit} frames."
            : $"{need}; the cards hold {speech.Number(r.RoomGb)} GB.";
    }

    private static string Second(SecondForecast r, Speech speech)
    {
        var first = r.FirstCloud is { } cloud ? $" where the first has {speech.Percent(cloud)}" : "";
        var finds = r.IsUsable ? "finds a usable run" : "finds no usable run";
        return $"The second feed has {speech.Percent(r.Cloud)} cloud in the run{first}; on its own it {finds}.";
    }

    private static string Age(double ageH, double limitH, Speech speech) => ageH > limitH
        ? $"The forecast is {speech.Number(ageH)} h old, and no newer one could be had; up to {speech.Number(limitH)} h it is trusted."
        : $"The forecast is {speech.Number(ageH)} h old.";
}
