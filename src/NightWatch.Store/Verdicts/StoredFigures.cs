using System.Text.Json;
using NightWatch.Planning.Chance;
using NightWatch.Store.Connections;

namespace NightWatch.Store.Verdicts;

/// <summary>The figures that a chance was made of, as their column keeps them: a list of numbers to four decimals.</summary>
/// <remarks>
/// Share, worth and stretch of the newest run; room, gust, rain (null: unknown); then, where there were several runs, their three.
/// </remarks>
internal static class StoredFigures
{
    private const int OfNewest = 6;
    private const int OfAll = 9;
    private const int Decimals = 4;

    /// <summary>No figure comes near it.</summary>
    private const double Greatest = 100;

    public static string Write(ChanceFigures figures)
    {
        var newest = figures.Newest;
        double?[] all = [newest.Share, newest.Worth, newest.Stretch, figures.Room, figures.Gust, figures.Rain];
        if (figures.Runs is { } runs) all = [.. all, runs.Share, runs.Worth, runs.Stretch];
        return StoreJson.Write(all.Select(figure => figure is { } value ? Math.Round(value, Decimals) : (double?)null));
    }

    public static ChanceFigures Read(string json)
    {
        var all = StoreJson.Read<double?[]>(json);
        if (all.Length is not (OfNewest or OfAll))
            throw new JsonException($"figures has {all.Length} numbers; accepted: {OfNewest} or {OfAll}.");
        return new ChanceFigures(
            new ForecastShape(At(0), At(1), At(2)),
            all.Length == OfAll ? new ForecastShape(At(6), At(7), At(8)) : null,
            At(3),
            At(4),
            all[5] is null ? null : At(5));

        double At(int place) => all[place] is { } value && Math.Abs(value) <= Greatest
            ? value
            : throw new JsonException($"figures has {all[place]} at place {place + 1}; accepted: a number from {-Greatest} to {Greatest}.");
    }
}
