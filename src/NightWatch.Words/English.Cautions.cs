using NightWatch.Planning.Hazards;
using NightWatch.Planning.Reasons;

namespace NightWatch.Words;

// What can hurt.
public sealed partial class English
{
    // NWS/NOAA: 30 seconds, 30 minutes; "When thunder roars, go indoors".
    private const string ThirtyThirty =
        "If you hear thunder, or count 30 seconds or less from flash to bang, lower tripod and rail and go into a car or a substantial " +
        "building; stay 30 minutes after the last thunder.";

    /// <summary>A reason tells of the run, a caution of all the way there and back, and so of more.</summary>
    private const string Outing = "between leaving home and coming back";

    private const string HeatAdvice = "Carry water, start after sunset, rest on the way in.";

    /// <inheritdoc/>
    public string Of(Caution caution, Speech speech) =>
        caution switch
        {
            Caution.ThunderNotTold => "This forecast says nothing about thunder: look at your weather service before you leave.",
            Caution.Thunder { Level: HazardLevel.Stop } c =>
                $"Thunder is forecast with a probability of {speech.Percent(c.Probability)} {Outing}. Do not set up metal in the open. " +
                $"{ThirtyThirty}",
            Caution.Thunder c => $"Thunder may come (probability {speech.Percent(c.Probability)} {Outing}). {ThirtyThirty}",
            Caution.Flood { Level: HazardLevel.Stop } c =>
                $"Up to {speech.Units.Figure(c.Mm, Unit.Millimetres)} of rain in an hour is forecast: flash floods may follow. " +
                $"{Depths(speech)}",
            Caution.Flood c => $"Heavy rain, up to {speech.Units.Figure(c.Mm, Unit.Millimetres)} in an hour, is forecast. {Depths(speech)}",
            Caution.Cold { SkinFreezesMin: { } minutes } c =>
                $"Wind chill falls to {Air(c.ChillC, speech)}: bare skin may freeze {SkinFreezes(minutes, speech)}. Keep hands and face " +
                "covered, warm up in the car between checks, do not go alone.",
            Caution.Cold c => $"Wind chill falls to {Air(c.ChillC, speech)}: dress for standing still, cover hands and face.",
            Caution.CarbonMonoxide =>
                "Never run an engine, stove or heater in a closed car or tent to keep warm or to charge: carbon monoxide kills without a " +
                "smell.",
            Caution.Heat { Danger: HeatDanger.Extreme } c =>
                $"Heat index up to {Air(c.IndexC, speech)}: extreme danger of heat stroke. Do not carry gear in this.",
            Caution.Heat { Danger: HeatDanger.Stroke } c =>
                $"Heat index up to {Air(c.IndexC, speech)}: heat stroke is possible when carrying. {HeatAdvice}",
            Caution.Heat c => $"Heat index up to {Air(c.IndexC, speech)}: heat exhaustion is possible. {HeatAdvice}",
            Caution.Gusts { Level: HazardLevel.Stop } c =>
                $"Gusts up to {Speed(c.GustMps, speech)} {Outing}, gale force: branches may fall and a rig may go over. Keep away from " +
                "edges and trees.",
            Caution.Gusts c => $"Gusts up to {Speed(c.GustMps, speech)} {Outing}: weigh the tripod down, keep away from edges.",
            Caution.IcyRoad { IsLikely: true } =>
                "Ice on the road is likely: freezing and wet, or frost forming. Consider another night, or wait for daylight to drive.",
            Caution.IcyRoad => "Ice on the road is possible, first on bridges, in hollows and in shade.",
            Caution.FoggyRoad { IsDense: true } c =>
                $"Dense fog, visibility down to {speech.Units.Figure(c.VisibilityM, Unit.Metres)}, is forecast for the drive: slow down, " +
                "or wait.",
            Caution.FoggyRoad c => $"Fog, visibility down to {speech.Units.Figure(c.VisibilityM, Unit.Metres)}, is forecast for the drive.",
            Caution.LongAwake c =>
                $"You would have been awake about {Whole(c.Hours, speech)} hours by the end of the drive home. After 17 to 19 hours " +
                "awake people react as with 0.05 % alcohol in the blood, over the limit in many countries (check yours). Sleep before " +
                "the night, and sleep there before driving.",
            Caution.ColdCells { Level: HazardLevel.Note } c =>
                $"Do not charge lithium-ion batteries below {Air(c.LeastC, speech)}, also not from a power bank or a panel; let them " +
                "warm slowly first.",
            Caution.ColdCells c =>
                $"Below {Air(c.LeastC, speech)} lithium-ion batteries are not to be relied on: keep spares against the body, warm them " +
                "slowly, never charge them cold.",
            _ => throw new ArgumentOutOfRangeException(nameof(caution), caution, "Accepted: one of the cases of a caution."),
        };

    // NWS "Turn Around Don't Drown": 6, 12, and 18 to 24 inches.
    private static string Depths(Speech speech) =>
        $"{speech.Units.Depth(15)} of moving water may knock an adult down, {speech.Units.Depth(30)} may float a small car. Keep out of " +
        "gullies, dry lakes and fords, also when the rain falls upstream.";

    private static string Air(double celsius, Speech speech) => speech.Units.Figure(celsius, Unit.Celsius);

    private static string SkinFreezes(double minutes, Speech speech) =>
        minutes < 2 ? "in less than two minutes" : $"in {Whole(minutes, speech)} minutes";

    private static string Whole(double value, Speech speech) => value.ToString("0", speech.Language.Culture);
}
