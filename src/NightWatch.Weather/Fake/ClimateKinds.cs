using System.Collections.Immutable;

namespace NightWatch.Weather.Fake;

/// <summary>The kinds of climate by the words that commands and settings know them by.</summary>
public static class ClimateKinds
{
    /// <summary>Where nothing else is asked for: the kind whose forecasts are held against those of an archive.</summary>
    public const ClimateKind Default = ClimateKind.HumidContinental;

    private static readonly ImmutableArray<(ClimateKind Kind, string Word)> words =
    [
        (ClimateKind.DryDesert, "dry-desert"),
        (ClimateKind.SemiAridHighPlain, "semi-arid-high-plain"),
        (ClimateKind.HumidContinental, "humid-continental"),
        (ClimateKind.MarineCoast, "marine-coast"),
    ];

    /// <summary>All words, in the order of the kinds.</summary>
    public static ImmutableArray<string> Words { get; } = [.. words.Select(pair => pair.Word)];

    /// <summary>The word of a kind.</summary>
    public static string Word(this ClimateKind kind) => words.First(pair => pair.Kind == kind).Word;

    /// <summary>The kind of a word; null: there is none.</summary>
    public static ClimateKind? Of(string word) =>
        words.Where(pair => pair.Word == word).Select(pair => (ClimateKind?)pair.Kind).FirstOrDefault();
}
