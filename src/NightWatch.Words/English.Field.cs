using NightWatch.Planning.Camera;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Power;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;

namespace NightWatch.Words;

// What to set and expect in the field.
public sealed partial class English
{
    /// <inheritdoc/>
    public string Aim(FramingPlan framing, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(framing);
        var (start, end) = (framing.Move.Start, framing.Move.End);
        if (start == end) return $"{Pose(start, speech)}, standing still";
        var moves = $"{Pose(start, speech)} at the first frame, {Pose(end, speech)} at the last";
        return framing.BetterEnd is { } better ? $"{moves}; {Pose(better, speech)} at the last would keep the subject longest" : moves;
    }

    /// <inheritdoc/>
    public string Motion(MotionPlan motion, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(motion);
        var culture = speech.Language.Culture;
        var mean = string.Create(
            culture, $"{motion.MeanPanDegPerFrame:0.000}° and {motion.MeanTiltDegPerFrame:0.000}° a frame in the mean");
        var rail = motion.MeanRailMmPerFrame > 0 ? string.Create(culture, $", rail {motion.MeanRailMmPerFrame:0.##} mm a frame") : "";
        var ramps =
            motion.EaseInFrames + motion.EaseOutFrames > 0
                ? string.Create(
                    culture,
                    $"; ramps of {Frames(motion.EaseInFrames)} in and {motion.EaseOutFrames} out, {motion.FastestOverMean:0.##} times " +
                    $"the mean between them")
                : "";
        return $"pan {speech.Number(motion.PanDeg)}°, tilt {speech.Number(motion.TiltDeg)}°: {mean}{rail}{ramps}";
    }

    /// <inheritdoc/>
    public string TestFrames(Sequence sequence, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        return string.Create(
            speech.Language.Culture,
            $"{sequence.TestExposureS:0.###} s at ISO {sequence.TestIso} come out as bright as {sequence.ExposureS:0.#} s at ISO " +
            $"{sequence.Iso}; one at the planned settings last");
    }

    /// <inheritdoc/>
    public string SkyInFrame(SkyLevelPlan level, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(level);
        var ends = $"{speech.Percent(level.AtStart)} of saturation at the first frame, {speech.Percent(level.AtEnd)} at the last";
        if (level.WashedOutFrom is not { } from) return ends;
        var past = $"{ends}; past {speech.Percent(level.Limit)} from {speech.Clock.Time(from)}";
        return level.LastSoundShot is { } shot ? $"{past}, frame {shot} is the last sound one" : past;
    }

    /// <inheritdoc/>
    public string DarkSky(SkyBrightnessPlan sky, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(sky);
        var overhead = $"{speech.OneDecimal(sky.ZenithMag)} mag/arcsec² overhead without Moon";
        var known = sky.IsMeasured
            ? $"{overhead}, measured at the site (±{speech.OneDecimal(SkyMeterMag)})"
            : $"{overhead}, estimated from the towns around ({speech.OneDecimal(sky.BrightestMag)} to {speech.OneDecimal(sky.DarkestMag)})";
        return sky is { LeastContrast: { } least, BestContrast: { } best }
            ? $"{known}; the subject stands out at {PercentRange(least, best, speech)} of its contrast overhead under a natural sky"
            : known;
    }

    /// <inheritdoc/>
    public string Lens(LensPlan lens, Kit kit, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(lens);
        ArgumentNullException.ThrowIfNull(kit);
        var deposit = lens.IsFrost ? "frost" : "dew";
        var bare = lens.Onset is { } onset
            ? $"Without a heater {deposit} from {speech.Clock.Time(onset)}"
            : $"Without a heater {speech.Units.Figure(lens.LeastMarginK, Unit.Kelvin)} above its {deposit} point";
        if (lens.HeaterOn is not { } on) return $"{bare}: no heater needed.";
        var needed = $"{speech.Number(lens.HeaterNeededW)} W from {speech.Clock.Time(on)} hold it clear";
        if (lens.KitHeaterW <= 0) return $"{bare}; {needed}, and the kit has no heater.";
        var heater = $"the kit's {speech.Number(lens.KitHeaterW)} W";
        var works = lens.HeatedOnset is { } late ? $"{heater} hold it off until {speech.Clock.Time(late)}" : $"{heater} keep it clear";
        return $"{bare}; {needed}; {works}{HeaterEnergy(lens, speech)}{HeaterSupply(lens, kit, speech)}.";
    }

    /// <inheritdoc/>
    public string Ground(GroundPlan ground, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(ground);
        var known = $"{Word(ground.AtArrival)} at arrival, {Word(ground.AtStart)} at the first frame";
        return ground.DryFrom is { } dry ? $"{known}, dry from {speech.Clock.Full(dry)}"
            : ground.AtStart == GroundState.Dry ? known
            : $"{known}, not dry by morning";
    }

    /// <inheritdoc/>
    public string Batteries(PowerPlan power, int packs, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(power);
        var culture = speech.Language.Culture;
        var given = power.AvailableWh is { } wh ? string.Create(culture, $"{wh:0} Wh") : Unknown;
        var energy = string.Create(culture, $"{power.NeedWh:0} Wh needed, the {(packs == 1 ? "pack gives" : "packs give")} {given} at ")
            + speech.Units.Figure(power.ColdestC, Unit.Celsius);
        var swaps = power.Swaps.Count == 0 ? "" : $"; change at {string.Join(", ", power.Swaps.Select(speech.Clock.Time))}";
        var end = power.Empty is { } empty ? $"; empty at {speech.Clock.Time(empty)}: take another" : "";
        return $"{energy}{swaps}{end}";
    }

    /// <inheritdoc/>
    public string? CardChange(StoragePlan storage, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(storage);
        return storage.Full is { } full ? $"the cards are full after {Frames(storage.ShotsThatFit)}, at {speech.Clock.Time(full)}" : null;
    }

    /// <summary>The usual accuracy of a hand-held meter, mag/arcsec² (common practice).</summary>
    private const double SkyMeterMag = 0.1;

    private static string HeaterEnergy(LensPlan lens, Speech speech) =>
        lens.HeaterNeedWh is not { } need ? ""
        : lens.HeaterBatteryGivesWh is { } gives ? $", taking {speech.Number(need)} Wh of the {speech.Number(gives)} Wh its battery gives"
        : $", taking {speech.Number(need)} Wh";

    // Whatever the heater hangs on.
    private static string HeaterSupply(LensPlan lens, Kit kit, Speech speech)
    {
        var (supply, last, are) = kit.DewHeaterBatteryWh is not null ? ("its battery", "suffices", "is")
            : kit.BatteriesWh.Count == 1 ? ("the camera's pack", "suffices", "is")
            : ("the camera's packs", "suffice", "are");
        return lens.HeaterEmpty is { } empty ? $"; {supply} {are} empty at {speech.Clock.Time(empty)}"
            : lens.HeaterSuffices == true ? $"; {supply} {last}"
            : "";
    }

    private static string Pose(Heading heading, Speech speech) =>
        heading.RollDeg == 0 ? Aim(heading, speech) : $"{Aim(heading, speech)}, roll {speech.Number(heading.RollDeg)}°";

    private static string Frames(int count) => count == 1 ? "1 frame" : $"{count} frames";

    /// <summary>"12 to 18 %"; one figure where both are said alike.</summary>
    private static string PercentRange(double least, double most, Speech speech) =>
        speech.Percent(least) == speech.Percent(most) ? speech.Percent(most)
        : string.Create(speech.Language.Culture, $"{100 * least:0} to {100 * most:0} %");
}
