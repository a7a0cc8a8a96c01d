using System.Collections.Immutable;
using System.Text.Json;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Chance;

/// <summary>What was learnt, as text to be stored: JSON with a version, the prior's name, beliefs and places in full precision.</summary>
public static class LearningText
{
    /// <summary>Rises when the text's shape or the meaning of a figure changes.</summary>
    public const int Version = 1;

    private const int LongestText = 8_000_000;
    private const int MostNights = 1_000_000;
    private const double GreatestCoefficient = 1_000;
    private const double GreatestPrecision = 1e9;
    private const double GreatestLogOdds = 10_000;

    /// <summary>Writes it.</summary>
    public static string Write(ChanceLearning learning)
    {
        ArgumentNullException.ThrowIfNull(learning);
        return JsonSerializer.Serialize(
            new Whole(
                Version,
                learning.Prior.Name,
                learning.Lead,
                learning.Nights,
                [.. learning.Beliefs.OrderBy(belief => belief.Key)
                    .Select(belief => new SetText(belief.Key, [.. belief.Value.Mean], [.. belief.Value.Precision.Lower]))],
                [.. learning.Places.OrderBy(place => place.Key, StringComparer.Ordinal)
                    .Select(place => new PlaceText(place.Key, place.Value.Nights, place.Value.Usable, place.Value.Preference.LogOdds))]),
            ChanceJson.Options);
    }

    /// <summary>Reads it.</summary>
    /// <param name="text">As written.</param>
    /// <param name="prior">The prior in use.</param>
    /// <returns>Null where it began as another prior or is of another version: learn again from the record.</returns>
    /// <exception cref="FormatException">It is broken or holds a value out of bounds; the message names the field.</exception>
    public static ChanceLearning? Read(string text, ChancePrior prior)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(prior);
        Hold(text.Length <= LongestText, $"the text has {text.Length} characters; accepted: at most {LongestText}");
        try
        {
            if (VersionOf(text) != Version) return null;
            var read = JsonSerializer.Deserialize<Whole>(text, ChanceJson.Options)!;
            return read.Prior == prior.Name ? Made(read, prior) : null;
        }
        catch (Exception wrong) when (wrong is JsonException or ArgumentException)
        {
            throw new FormatException($"What was learnt cannot be read: {wrong.Message}", wrong);
        }
    }

    // Another version may have other members, so its number is read by itself.
    private static int VersionOf(string text)
    {
        using var json = JsonDocument.Parse(text, new JsonDocumentOptions { MaxDepth = ChanceJson.Options.MaxDepth });
        if (json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty("version", out var version)
            && version.ValueKind == JsonValueKind.Number && version.TryGetInt32(out var number)) return number;
        throw new FormatException("What was learnt cannot be read: version is missing.");
    }

    private static ChanceLearning Made(Whole read, ChancePrior prior)
    {
        Hold(read.Lead is >= 0 and <= 16, $"lead is {read.Lead}; accepted: 0 to 16");
        Hold(read.Nights is >= 0 and <= MostNights, $"nights is {read.Nights}; accepted: 0 to {MostNights}");
        Hold(read.Sets.Select(set => set.Set).Order().SequenceEqual(FigureSets.All.Order()), "sets are not each of the four once");
        const int most = ChanceLearning.MostPlaces;
        Hold(read.Places.Count <= most, $"places has {read.Places.Count} entries; accepted: at most {most}");
        var twice = read.Places.GroupBy(place => place.Name, StringComparer.Ordinal).FirstOrDefault(place => place.Skip(1).Any())?.Key;
        Hold(twice is null, $"places has {twice} twice");
        return new ChanceLearning(
            prior,
            read.Lead,
            read.Nights,
            read.Sets.ToImmutableDictionary(set => set.Set, BeliefOf),
            read.Places.ToImmutableDictionary(place => place.Name, RecordOf, StringComparer.Ordinal));
    }

    private static Belief BeliefOf(SetText set)
    {
        Hold(set.Mean.Length == set.Set.Length(), $"the mean of {set.Set} has {set.Mean.Length} values; accepted: {set.Set.Length()}");
        Hold(set.Mean.All(value => Math.Abs(value) <= GreatestCoefficient), $"a mean of {set.Set} is beyond {GreatestCoefficient}");
        Hold(set.Precision.All(value => Math.Abs(value) <= GreatestPrecision), $"a precision of {set.Set} is beyond {GreatestPrecision}");
        var precision = SymmetricMatrix.OfLower(set.Mean.Length, set.Precision);
        Hold(Cholesky.TryOf(precision) is not null, $"the precision of {set.Set} is not positive definite");
        return new Belief([.. set.Mean], precision);
    }

    private static PlaceRecord RecordOf(PlaceText place)
    {
        const int longest = ChanceLearning.LongestName;
        Hold(place.Name.Length is > 0 and <= longest, $"a place's name has {place.Name.Length} characters; accepted: 1 to {longest}");
        Hold(place.Nights is >= 0 and <= MostNights, $"nights of {place.Name} is {place.Nights}; accepted: 0 to {MostNights}");
        Hold(place.Usable >= 0 && place.Usable <= place.Nights, $"usable of {place.Name} is {place.Usable}; accepted: 0 to its nights");
        const double greatest = GreatestLogOdds;
        Hold(Math.Abs(place.LogOdds) <= greatest, $"logOdds of {place.Name} is {place.LogOdds}; accepted: {-greatest} to {greatest}");
        return new PlaceRecord(place.Nights, place.Usable, new Preference(place.LogOdds));
    }

    private static void Hold(bool holds, string otherwise)
    {
        if (!holds) throw new FormatException($"What was learnt cannot be read: {otherwise}.");
    }

    private sealed record Whole(
        int Version, string Prior, int Lead, int Nights, IReadOnlyList<SetText> Sets, IReadOnlyList<PlaceText> Places);

    private sealed record SetText(FigureSet Set, double[] Mean, double[] Precision);

    private sealed record PlaceText(string Name, double Nights, double Usable, double LogOdds);
}
