using System.Collections.Frozen;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Chance;

/// <summary>Where a new installation starts: coefficients by set of figures and lead, fitted on archives of real forecasts.</summary>
public sealed class ChancePrior
{
    /// <summary>
    /// By how much log odds shrink with each lead past the last that was fitted. Night-mean cloud forecast and come correlated by .62 three
    /// days ahead and by .42 five days ahead (961 nights of New York), so .82 a day; that log odds shrink alike is an assumption.
    /// </summary>
    public const double FadingPerLead = 0.82;

    private readonly FrozenDictionary<(FigureSet Set, int Lead), PriorEntry> entries;

    /// <param name="name">Changes with the values, so that what was learnt from others is not mixed with them.</param>
    /// <param name="source">What it was fitted on, with the attribution of the data.</param>
    /// <param name="entries">Each set at the same leads, from 0 without a gap.</param>
    /// <exception cref="ArgumentException">A set at a lead is missing or stands twice.</exception>
    public ChancePrior(string name, string source, IEnumerable<PriorEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        (Name, Source) = (name, source);
        All = [.. entries.OrderBy(entry => entry.Lead).ThenBy(entry => entry.Set)];
        LastLead = All.Count > 0 ? All[^1].Lead : 0;
        var wanted = Enumerable.Range(0, LastLead + 1).SelectMany(lead => FigureSets.All.Order().Select(set => (set, lead)));
        if (!All.Select(entry => (entry.Set, entry.Lead)).SequenceEqual(wanted))
            throw new ArgumentException("Accepted: each set of figures once at every lead from 0 to the last.", nameof(entries));
        this.entries = All.ToFrozenDictionary(entry => (entry.Set, entry.Lead));
    }

    /// <summary>The prior that comes with the program.</summary>
    public static ChancePrior Shipped { get; } = PriorText.ReadShipped();

    /// <summary>Knows nothing: every coefficient 0, give or take 1 when it weighs 20 nights.</summary>
    public static ChancePrior None { get; } = new("none", "Nothing was fitted.", FigureSets.All.Select(set =>
        new PriorEntry(set, 0, [.. new double[set.Length()]], SymmetricMatrix.Diagonal([.. Enumerable.Repeat(0.05, set.Length())]))));

    /// <summary>Changes with the values.</summary>
    public string Name { get; }

    /// <summary>What it was fitted on, with the attribution of the data.</summary>
    public string Source { get; }

    /// <summary>The last lead that was fitted.</summary>
    public int LastLead { get; }

    /// <summary>By lead, then set.</summary>
    public IReadOnlyList<PriorEntry> All { get; }

    /// <summary>The entry of a set at a lead. Past the last lead fitted its log odds fade, see <see cref="FadingPerLead"/>.</summary>
    /// <param name="set">Which figures are known.</param>
    /// <param name="lead">Nights ahead, 0 on the day.</param>
    public PriorEntry Of(FigureSet set, int lead)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(lead);
        if (lead <= LastLead) return entries[(set, lead)];
        var last = entries[(set, LastLead)];
        var fading = Math.Pow(FadingPerLead, lead - LastLead);
        return new PriorEntry(set, lead, [.. last.Mean.Select(value => value * fading)], last.Information);
    }
}
