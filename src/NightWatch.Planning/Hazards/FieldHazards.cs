namespace NightWatch.Planning.Hazards;

/// <summary>From what a night exposes a person to, to cautions, worst first.</summary>
public static class FieldHazards
{
    private const double HeavyRainMmPerH = 7.6;   // "heavy" in the American Meteorological Society's Glossary
    private const double FloodRainMmPerH = 20;    // engineering choice
    private const double NearGaleMps = 13.9;      // Beaufort 7, WMO-No. 306
    private const double GaleMps = 17.2;          // Beaufort 8
    private const double DenseFogM = 200;         // common practice of road weather services
    private const double FogM = 1000;             // WMO's definition of fog

    /// <summary>The cautions; empty when there are none.</summary>
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
        if (night.ThunderProbability is not { } probability) cautions.Add(new Caution.ThunderNotTold());
        else if (probability >= night.ThunderStop) cautions.Add(new Caution.Thunder(HazardLevel.Stop, probability));
        else if (probability >= night.ThunderCare) cautions.Add(new Caution.Thunder(HazardLevel.Care, probability));
    }

    private static void AddFlood(List<Caution> cautions, double? rain)
    {
        if (rain >= FloodRainMmPerH) cautions.Add(new Caution.Flood(HazardLevel.Stop, rain.Value));
        else if (rain >= HeavyRainMmPerH) cautions.Add(new Caution.Flood(HazardLevel.Care, rain.Value));
    }

    private static void AddCold(List<Caution> cautions, NightExposure night)
    {
        if (night.LeastWindChillC is not { } chill || chill > -10) return;
        // Environment Canada's wind chill table: -28, -40, -48, -55; at the last "in less than two minutes".
        var minutes = night.FrostbiteMinutes is { } computed ? Math.Floor(computed) : (double?)null;
        var (level, table) = chill switch
        {
            <= -55 => (HazardLevel.Stop, 1.0),
            <= -48 => (HazardLevel.Stop, 2),
            <= -40 => (HazardLevel.Care, 5),
            <= -28 => (HazardLevel.Care, 10),
            _ => (HazardLevel.Note, (double?)null),
        };
        cautions.Add(new Caution.Cold(level, chill, table is { } most ? Math.Max(1, Math.Min(minutes ?? most, most)) : null));
        cautions.Add(new Caution.CarbonMonoxide());
    }

    private static void AddHeat(List<Caution> cautions, double? indexC)
    {
        // NWS heat index classes: 90, 103, 125 °F.
        if (indexC >= 51.7) cautions.Add(new Caution.Heat(HazardLevel.Stop, indexC.Value, HeatDanger.Extreme));
        else if (indexC >= 39.4) cautions.Add(new Caution.Heat(HazardLevel.Care, indexC.Value, HeatDanger.Stroke));
        else if (indexC >= 32.2) cautions.Add(new Caution.Heat(HazardLevel.Care, indexC.Value, HeatDanger.Exhaustion));
    }

    private static void AddWind(List<Caution> cautions, double? gust)
    {
        if (gust >= GaleMps) cautions.Add(new Caution.Gusts(HazardLevel.Stop, gust.Value));
        else if (gust >= NearGaleMps) cautions.Add(new Caution.Gusts(HazardLevel.Care, gust.Value));
    }

    private static void AddRoad(List<Caution> cautions, NightExposure night)
    {
        if (night.RoadIce is RoadIceRisk.Likely or RoadIceRisk.Possible)
            cautions.Add(new Caution.IcyRoad(night.RoadIce == RoadIceRisk.Likely));
        if (night.LeastDriveVisibilityM < FogM)
            cautions.Add(new Caution.FoggyRoad(night.LeastDriveVisibilityM.Value, night.LeastDriveVisibilityM < DenseFogM));
    }

    private static void AddFatigue(List<Caution> cautions, double? hoursAwake)
    {
        if (hoursAwake >= Fatigue.CautionHours) cautions.Add(new Caution.LongAwake(hoursAwake.Value));
    }

    private static void AddCells(List<Caution> cautions, double? leastAirC)
    {
        if (leastAirC < Power.ColdCell.LeastDischargeC)
            cautions.Add(new Caution.ColdCells(HazardLevel.Care, Power.ColdCell.LeastDischargeC));
        else if (leastAirC < Power.ColdCell.LeastChargeC)
            cautions.Add(new Caution.ColdCells(HazardLevel.Note, Power.ColdCell.LeastChargeC));
    }
}
