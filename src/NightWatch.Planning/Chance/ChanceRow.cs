namespace NightWatch.Planning.Chance;

/// <summary>A look at a night that is over: what was forecast, and what came.</summary>
/// <param name="Place">Whose climate it belongs to: one name a site, or a watch, as the caller keeps its record.</param>
/// <param name="Figures">What was known at the look.</param>
/// <param name="Usable">Whether the night was usable.</param>
public readonly record struct ChanceRow(string Place, ChanceFigures Figures, bool Usable);
