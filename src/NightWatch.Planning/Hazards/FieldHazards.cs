using System.Globalization;

namespace NightWatch.Planning.Hazards;

/// <summary>From what a night exposes a person to, to worded cautions, worst first.</summary>
public static class FieldHazards
{
    private const double HeavyRainMmPerH = 7.6;   // "heavy" in the American Meteorological Society's Glossary
    private const double FloodRainMmPerH = 20;    // engineering choice
    private const double NearGaleMps = 13.9;      // Beaufort 7, WMO-No. 306
    private const double GaleMps = 17.2;          // Beaufort 8
    private const double DenseFogM = 200;         // common practice of road weather services
    private const double FogM = 1000;             // WMO's definition of fog

    /// <summary>The cautions; empty when there are none. Close a list of them with <see cref="Caution.Deference"/>.</summary>
    public static IReadOnlyList<Caution> Of(NightExposure night)
    {
        var cautions = new List<Caution>();
        AddThunder(cautions, night);
        AddFlood(cautions, night.HeaviestRainMmPerH);
        AddCold(cautions, night);
        AddHeat(cautions, night.MostHeatIndexC);
        AddWind(cautions, night.MostGustMps);
        AddRoad(cautions, night);
        AddFatigue(cautions, night.HoursAwake);
        AddCells(cautions, night.LeastAirC);
        return [.. cautions.OrderByDescending(c => c.Level).ThenBy(c => c.Kind)];
    }

    private static void AddThunder(List<Caution> cautions, NightExposure night)
    {
        // NWS/NOAA: 30 seconds, 30 minutes; "When thunder roars, go indoors".
        const string rule = "If you hear thunder, or count 30 seconds or less from flash to bang, lower tripod and rail and go into a car or a substantial building; stay 30 minutes after the last thunder.";
        if (night.ThunderProbability is not { } probability)
            cautions.Add(new(HazardKind.Thunder, HazardLevel.Note, "This forecast says nothing about thunder: look at your weather service before you leave."));
        else if (probability >= night.ThunderStop)
            cautions.Add(new(HazardKind.Thunder, HazardLevel.Stop, $"Thunder is forecast with a probability of {Percent(probability)}. Do not set up metal in the open. {rule}"));
        else if (probability >= night.ThunderCare)
            cautions.Add(new(HazardKind.Thunder, HazardLevel.Care, $"Thunder may come (probability {Percent(probability)}). {rule}"));
    }

    private static void AddFlood(List<Caution> cautions, double? rain)
    {
        // NWS "Turn Around Don't Drown": 6, 12, and 18 to 24 inches.
        const string depths = "15 cm of moving water may knock an adult down, 30 cm may float a small car. Keep out of gullies, dry lakes and fords, also when the rain falls upstream.";
        if (rain >= FloodRainMmPerH)
            cautions.Add(new(HazardKind.Flood, HazardLevel.Stop, $"Up to {Number(rain.Value)} mm of rain in an hour is forecast: flash floods may follow. {depths}"));
        else if (rain >= HeavyRainMmPerH)
            cautions.Add(new(HazardKind.Flood, HazardLevel.Care, $"Heavy rain, up to {Number(rain.Value)} mm in an hour, is forecast. {depths}"));
    }

    private static void AddCold(List<Caution> cautions, NightExposure night)
    {
        if (night.LeastWindChillC is not { } chill || chill > -10) return;
        // Environment Canada's wind chill table: -28, -40, -48, -55.
        var minutes = night.FrostbiteMinutes is { } computed ? Math.Floor(computed) : (double?)null;
        var (level, table) = chill switch
        {
            <= -55 => (HazardLevel.Stop, 2.0),
            <= -48 => (HazardLevel.Stop, 2),
            <= -40 => (HazardLevel.Care, 5),
            <= -28 => (HazardLevel.Care, 10),
            _ => (HazardLevel.Note, double.NaN),
        };
        var skin = chill <= -55 ? "in less than two minutes"
            : $"in {Number(Math.Max(1, Math.Min(minutes ?? table, table)))} minutes";
        var text = level == HazardLevel.Note
            ? $"Wind chill falls to {Number(chill)} °C: dress for standing still, cover hands and face."
            : $"Wind chill falls to {Number(chill)} °C: bare skin may freeze {skin}. Keep hands and face covered, warm up in the car between checks, do not go alone.";
        cautions.Add(new(HazardKind.Cold, level, text));
        cautions.Add(new(HazardKind.CarbonMonoxide, HazardLevel.Note, "Never run an engine, stove or heater in a closed car or tent to keep warm or to charge: carbon monoxide kills without a smell."));
    }

    private static void AddHeat(List<Caution> cautions, double? indexC)
    {
        // NWS heat index classes: 90, 103, 125 °F.
        const string advice = "Carry water, start after sunset, rest on the way in.";
        if (indexC >= 51.7)
            cautions.Add(new(HazardKind.Heat, HazardLevel.Stop, $"Heat index up to {Number(indexC.Value)} °C: extreme danger of heat stroke. Do not carry gear in this."));
        else if (indexC >= 39.4)
            cautions.Add(new(HazardKind.Heat, HazardLevel.Care, $"Heat index up to {Number(indexC.Value)} °C: heat stroke is possible when carrying. {advice}"));
        else if (indexC >= 32.2)
            cautions.Add(new(HazardKind.Heat, HazardLevel.Care, $"Heat index up to {Number(indexC.Value)} °C: heat exhaustion is possible. {advice}"));
    }

    private static void AddWind(List<Caution> cautions, double? gust)
    {
        if (gust >= GaleMps)
            cautions.Add(new(HazardKind.Wind, HazardLevel.Stop, $"Gusts up to {Number(gust.Value)} m/s, gale force: branches may fall and a rig may go over. Keep away from edges and trees."));
        else if (gust >= NearGaleMps)
            cautions.Add(new(HazardKind.Wind, HazardLevel.Care, $"Gusts up to {Number(gust.Value)} m/s: weigh the tripod down, keep away from edges."));
    }

    private static void AddRoad(List<Caution> cautions, NightExposure night)
    {
        if (night.RoadIce == RoadIceRisk.Likely)
            cautions.Add(new(HazardKind.RoadIce, HazardLevel.Care, "Ice on the road is likely: freezing and wet, or frost forming. Consider another night, or wait for daylight to drive."));
        else if (night.RoadIce == RoadIceRisk.Possible)
            cautions.Add(new(HazardKind.RoadIce, HazardLevel.Care, "Ice on the road is possible, first on bridges, in hollows and in shade."));
        if (night.LeastDriveVisibilityM < DenseFogM)
            cautions.Add(new(HazardKind.RoadFog, HazardLevel.Care, $"Dense fog, visibility down to {Number(night.LeastDriveVisibilityM.Value)} m, is forecast for the drive: slow down, or wait."));
        else if (night.LeastDriveVisibilityM < FogM)
            cautions.Add(new(HazardKind.RoadFog, HazardLevel.Care, $"Fog, visibility down to {Number(night.LeastDriveVisibilityM.Value)} m, is forecast for the drive."));
    }

    private static void AddFatigue(List<Caution> cautions, double? hoursAwake)
    {
        if (!(hoursAwake >= Fatigue.CautionHours)) return;
        cautions.Add(new(
            HazardKind.Fatigue,
            HazardLevel.Care,
            $"You would have been awake about {Number(hoursAwake.Value)} hours by the end of the drive home. {Fatigue.Advice}"));
    }

    private static void AddCells(List<Caution> cautions, double? leastAirC)
    {
        if (leastAirC < Power.ColdCell.LeastDischargeC)
            cautions.Add(new(HazardKind.Battery, HazardLevel.Care, "Below −20 °C lithium-ion batteries are not to be relied on: keep spares against the body, warm them slowly, never charge them cold."));
        else if (leastAirC < Power.ColdCell.LeastChargeC)
            cautions.Add(new(HazardKind.Battery, HazardLevel.Note, "Do not charge lithium-ion batteries below 0 °C, also not from a power bank or a panel; let them warm slowly first."));
    }

    private static string Percent(double fraction) => (fraction * 100).ToString("0", CultureInfo.InvariantCulture) + " %";

    private static string Number(double value) => value.ToString("0", CultureInfo.InvariantCulture).Replace('-', '−');
}
