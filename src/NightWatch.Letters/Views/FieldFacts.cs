using System.Globalization;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>What to set and expect in the field: aim, move, test frames, sky, lens, ground, batteries, cards.</summary>
public static class FieldFacts
{
    /// <summary>In the site's clock time and the subscriber's units; facts that are not known are left out.</summary>
    public static IReadOnlyList<FactView> Of(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var speech = Speech.To(plan.Watch);
        var (clock, units) = (speech.Clock, speech.Units);
        FactView?[] facts =
        [
            Aim(plan), Motion(plan), Tests(plan), Level(plan, clock), Sky(plan), Lens(plan, clock, units), Ground(plan, clock), Power(plan, clock, units), Cards(plan, clock),
        ];
        return [.. facts.OfType<FactView>()];
    }

    private static FactView? Aim(NightPlan plan) => plan.Framing is not { } framing ? null : new FactView(
        "Aim",
        framing.Move.Start == framing.Move.End
            ? $"{Heading(framing.Move.Start)}, standing still"
            : $"{Heading(framing.Move.Start)} at the first frame, {Heading(framing.Move.End)} at the last"
                + (framing.BetterEnd is { } better ? $"; {Heading(better)} at the last would keep the subject longest" : ""));

    private static FactView? Motion(NightPlan plan) => plan.Motion is not { } motion ? null : new FactView(
        "Move",
        Say($"pan {motion.PanDeg:0.#}°, tilt {motion.TiltDeg:0.#}°: {motion.MeanPanDegPerFrame:0.000}° and {motion.MeanTiltDegPerFrame:0.000}° a frame in the mean")
            + (motion.MeanRailMmPerFrame > 0 ? Say($", rail {motion.MeanRailMmPerFrame:0.##} mm a frame") : "")
            + (motion.EaseInFrames + motion.EaseOutFrames > 0
                ? Say($"; ramps of {motion.EaseInFrames} frames in and {motion.EaseOutFrames} out, {motion.FastestOverMean:0.##} times the mean between them") : ""));

    private static FactView? Tests(NightPlan plan) => plan.Sequence is not { TestIso: > 0 } s ? null : new FactView(
        "Test frames", Say($"{s.TestExposureS:0.###} s at ISO {s.TestIso} come out as bright as {s.ExposureS:0.#} s at ISO {s.Iso}; one at the planned settings last"));

    private static FactView? Level(NightPlan plan, ClockWords clock) => plan.SkyLevel is not { } level ? null : new FactView(
        "Sky in the frame",
        Say($"{100 * level.AtStart:0} % of saturation at the first frame, {100 * level.AtEnd:0} % at the last")
            + (level.WashedOutFrom is { } from ? Say($"; past {100 * level.Limit:0} % from {clock.Time(from)}")
                + (level.LastSoundShot is { } shot ? Say($", frame {shot} is the last sound one") : "") : ""));

    private static FactView? Sky(NightPlan plan)
    {
        if (plan.SkyBrightness is not { } sky) return null;
        var text = sky.IsMeasured
            ? Say($"{sky.ZenithMag:0.0} mag/arcsec² overhead without Moon, measured at the site (±0.1)")
            : Say($"{sky.ZenithMag:0.0} mag/arcsec² overhead without Moon, estimated from the towns around ({sky.BrightestMag:0.0} to {sky.DarkestMag:0.0})");
        return new FactView("Dark sky", sky is { LeastContrast: { } least, BestContrast: { } best }
            ? Say($"{text}; the subject stands out at {Range(least, best)} of its contrast overhead under a natural sky")
            : text);
    }

    private static FactView? Lens(NightPlan plan, ClockWords clock, UnitWords units)
    {
        if (plan.Lens is not { LeastMarginK: { } margin } lens) return null;
        var point = lens.IsFrost ? "frost point" : "dew point";
        var bare = lens.Onset is { } onset ? $"Without a heater {(lens.IsFrost ? "frost" : "dew")} from {clock.Time(onset)}" : $"Without a heater {units.Figure(margin, Unit.Kelvin)} above its {point}";
        if (lens.HeaterOn is not { } on) return new FactView("Lens", $"{bare}: no heater needed.");
        var needed = Say($"{lens.HeaterNeededW:0.#} W from {clock.Time(on)} hold it clear");
        if (lens.KitHeaterW <= 0) return new FactView("Lens", $"{bare}; {needed}, and the kit has no heater.");
        var kit = Say($"the kit's {lens.KitHeaterW:0.#} W ");
        var with = lens.HeatedOnset is { } late ? $"hold it off until {clock.Time(late)}" : "keep it clear";
        var energy = lens.HeaterNeedWh is { } need
            ? Say($", taking {need:0.#} Wh") + (lens.HeaterBatteryGivesWh is { } gives ? Say($" of the {gives:0.#} Wh its battery gives") : "")
            : "";
        var battery = lens.HeaterEmpty is { } empty ? $"; its battery is empty at {clock.Time(empty)}" : lens.HeaterSuffices == true ? "; its battery suffices" : "";
        return new FactView("Lens", $"{bare}; {needed}; {kit}{with}{energy}{battery}.");
    }

    private static FactView? Ground(NightPlan plan, ClockWords clock) => plan.Ground is not { AtStart: not GroundState.Unknown } ground ? null : new FactView(
        "Ground",
        $"{Word(ground.AtArrival)} at arrival, {Word(ground.AtStart)} at the first frame"
            + (ground.DryFrom is { } dry ? $", dry from {clock.Full(dry)}" : ground.AtStart == GroundState.Dry ? "" : ", not dry by morning"));

    private static FactView? Power(NightPlan plan, ClockWords clock, UnitWords units)
    {
        if (plan.Power is not { AvailableWh: { } gives, ColdestC: { } cold } power) return null;
        var swaps = power.Swaps.Count == 0 ? "" : $"; change at {string.Join(", ", power.Swaps.Select(clock.Time))}";
        var end = power.Empty is { } empty ? $"; empty at {clock.Time(empty)}: take another" : "";
        return new FactView("Batteries", Say($"{power.NeedWh:0} Wh needed, the packs give {gives:0} Wh at ") + units.Figure(cold, Unit.Celsius) + swaps + end);
    }

    private static FactView? Cards(NightPlan plan, ClockWords clock) => plan.Storage is not { Full: { } full } storage ? null : new FactView(
        "Card change", Say($"the cards are full after {storage.ShotsThatFit} frames, at {clock.Time(full)}"));

    private static string Range(double least, double most) =>
        Say($"{100 * least:0}") == Say($"{100 * most:0}") ? Say($"{100 * most:0} %") : Say($"{100 * least:0} to {100 * most:0} %");

    private static string Word(GroundState state) => state.ToString().ToLowerInvariant();

    private static string Heading(Heading heading) => Say($"azimuth {heading.AzimuthDeg:0.#}°, altitude {heading.AltitudeDeg:0.#}°")
        + (heading.RollDeg == 0 ? "" : Say($", roll {heading.RollDeg:0.#}°"));

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
