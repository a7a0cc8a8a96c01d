using System.Collections.Immutable;
using NightWatch.Planning.Chance.Fitting;

namespace NightWatch.Planning.Chance;

/// <summary>What an installation's own record taught of one feed at one lead. Immutable: a night more gives a new one.</summary>
/// <remarks>
/// <para>
/// It begins as the prior, which weighs as much as 20 nights. Each night's posterior is the next one's prior (Spiegelhalter and Lauritzen
/// 1990, Networks 20, 579), so that no rows need be kept. A row teaches every set whose figures it has. The belief itself may come to have
/// a wrong sign; the coefficients in use are the most likely ones among those with the right signs.
/// </para>
/// <para>The rows of one night weigh one night together: places near each other share their weather.</para>
/// </remarks>
public sealed class ChanceLearning
{
    /// <summary>Nights of record that the prior weighs as much as.</summary>
    public const double NightsOfPrior = 20;

    /// <summary>A place past this many is not remembered and always begins anew.</summary>
    internal const int MostPlaces = 20_000;

    /// <summary>A place's name has at most so many characters.</summary>
    internal const int LongestName = 200;

    private readonly ImmutableDictionary<FigureSet, Belief> beliefs;
    private readonly ImmutableDictionary<string, PlaceRecord> places;
    private readonly ImmutableDictionary<FigureSet, ChanceModel.Regression> regressions;

    internal ChanceLearning(
        ChancePrior prior,
        int lead,
        int nights,
        ImmutableDictionary<FigureSet, Belief> beliefs,
        ImmutableDictionary<string, PlaceRecord> places)
    {
        (Prior, Lead, Nights, this.beliefs, this.places) = (prior, lead, nights, beliefs, places);
        regressions = beliefs.ToImmutableDictionary(belief => belief.Key, belief => RegressionOf(prior.Of(belief.Key, lead), belief.Value));
    }

    /// <summary>What it began as.</summary>
    public ChancePrior Prior { get; }

    /// <summary>Nights ahead, 0 on the day.</summary>
    public int Lead { get; }

    /// <summary>Nights learnt from.</summary>
    public int Nights { get; }

    /// <summary>Places with a record of their own.</summary>
    public IEnumerable<string> KnownPlaces => places.Keys;

    internal IReadOnlyDictionary<FigureSet, Belief> Beliefs => beliefs;

    internal IReadOnlyDictionary<string, PlaceRecord> Places => places;

    /// <summary>Before the first night.</summary>
    /// <param name="prior">Where it begins.</param>
    /// <param name="lead">Nights ahead, 0 on the day.</param>
    public static ChanceLearning Start(ChancePrior prior, int lead)
    {
        ArgumentNullException.ThrowIfNull(prior);
        return new ChanceLearning(
            prior,
            lead,
            0,
            FigureSets.All.ToImmutableDictionary(set => set, set => prior.Of(set, lead).Worth(NightsOfPrior)),
            ImmutableDictionary.Create<string, PlaceRecord>(StringComparer.Ordinal));
    }

    /// <summary>With one night more.</summary>
    /// <param name="night">What was forecast for it at this lead and what came, at every place and watch; none changes nothing.</param>
    /// <exception cref="ArgumentException">A place without a name, or with one of more than 200 characters.</exception>
    public ChanceLearning After(IReadOnlyCollection<ChanceRow> night)
    {
        ArgumentNullException.ThrowIfNull(night);
        if (night.Any(row => row.Place is not { Length: > 0 and <= LongestName }))
            throw new ArgumentException($"Accepted: a place's name of 1 to {LongestName} characters.", nameof(night));
        if (night.Count == 0) return this;
        return new ChanceLearning(
            Prior,
            Lead,
            Nights + 1,
            beliefs.ToImmutableDictionary(belief => belief.Key, belief => Learnt(belief.Key, belief.Value, night)),
            night.GroupBy(row => row.Place, StringComparer.Ordinal).Aggregate(places, (known, place) =>
                known.Count < MostPlaces || known.ContainsKey(place.Key) ? known.SetItem(place.Key, Scored(place)) : known));
    }

    /// <summary>The model to use at a place; one without a record of its own has the climate and weights of the start.</summary>
    public ChanceModel ModelFor(string place)
    {
        var record = RecordOf(place);
        return new ChanceModel(regressions, record.Preference.Weight, record.Climate, Nights);
    }

    private PlaceRecord RecordOf(string place) => places.TryGetValue(place, out var known) ? known : PlaceRecord.Start;

    private PlaceRecord Scored(IGrouping<string, ChanceRow> rows)
    {
        var model = ModelFor(rows.Key);
        return RecordOf(rows.Key).After([.. rows.Select(row => (model.OfForecast(row.Figures), row.Usable))]);
    }

    private static Belief Learnt(FigureSet set, Belief before, IReadOnlyCollection<ChanceRow> night)
    {
        LogisticRow[] rows =
        [
            .. from row in night
               where row.Figures.Has(set)
               select new LogisticRow(row.Figures.Of(set), row.Usable, 1.0 / night.Count),
        ];
        return rows.Length > 0 ? BayesLogistic.Fit(before, rows).Posterior : before;
    }

    // The mean over nights of the log odds' variance, each night weighed by its information: 4 trace(S M), as p(1-p) is at most 1/4.
    private static ChanceModel.Regression RegressionOf(PriorEntry prior, Belief belief) => new(
        BayesLogistic.Fit(belief, [], prior.Set.Signs()).Posterior.Mean,
        4 * belief.Covariance().TraceWith(prior.Information));
}
