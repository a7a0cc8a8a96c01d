using System.Collections.Immutable;

namespace NightWatch.Planning.Verification.Expenses;

/// <summary>What came when about so much was said.</summary>
/// <param name="Said">Mean of what was said; null in an empty cell.</param>
/// <param name="Came">Share that came; null in an empty cell.</param>
/// <param name="N">How many nights were scored.</param>
public readonly record struct ReliabilityCell(double? Said, double? Came, int N);

/// <summary>Expense of going where the dark hours' forecast cloud is at most so much.</summary>
/// <param name="Limit">Mean cloud, fraction.</param>
/// <param name="Expense">A hundred nights.</param>
public readonly record struct CloudRule(double Limit, double Expense);

/// <summary>What the rules cost one reader, all in drives for nothing a hundred nights.</summary>
/// <param name="LossPerDrive">What a usable night not gone to counts.</param>
/// <param name="Calls">Going at go or marginal, as this reader is told.</param>
/// <param name="Always">Going every night.</param>
/// <param name="Never">Staying at home.</param>
/// <param name="DarkCloud">Going by the forecast cloud alone; empty: it is known of no look.</param>
/// <param name="FixedLimits">Going by the fixed limits; null: a look was not held against them.</param>
public sealed record RuleExpense(double LossPerDrive, double Calls, double Always, double Never,
    IReadOnlyList<CloudRule> DarkCloud, double? FixedLimits);

/// <summary>How the looks so many nights ahead did.</summary>
/// <param name="Lead">Nights ahead.</param>
/// <param name="N">Nights scored.</param>
/// <param name="UsableShare">Of them usable; null without a night, as all that follows.</param>
/// <param name="Brier">Score of the probabilities.</param>
/// <param name="Climate">Score of always saying the usable share of these very nights.</param>
/// <param name="Skill">1 − Brier/climate; null too where all came or none.</param>
/// <param name="Reliability">Ten cells from 0 to 1.</param>
/// <param name="Expense">One row a reader.</param>
public sealed record LookScores(
    int Lead, int N, double? UsableShare, double? Brier, double? Climate, double? Skill,
    IReadOnlyList<ReliabilityCell> Reliability, IReadOnlyList<RuleExpense> Expense)
{
    /// <summary>Cloud that simple rules go by, fraction.</summary>
    public static readonly ImmutableArray<double> CloudLimits = [0.3, 0.4, 0.5, 0.6];

    /// <summary>Of looks at different nights.</summary>
    /// <param name="lead">Nights ahead.</param>
    /// <param name="looks">Any number.</param>
    public static LookScores Of(int lead, IReadOnlyList<ScoredLook> looks)
    {
        ArgumentNullException.ThrowIfNull(looks);
        ForecastPair[] pairs = [.. looks.Select(look => look.Pair)];
        ReliabilityCell[] cells =
            [.. ReliabilityDiagram.Of(pairs).Select(bin => new ReliabilityCell(bin.MeanSaid, bin.Frequency, bin.Count))];
        if (pairs.Length == 0) return new LookScores(lead, 0, null, null, null, null, cells, []);
        var brier = BrierScore.Of(pairs);
        return new LookScores(
            lead, pairs.Length, brier.BaseRate, brier.Value, brier.Uncertainty, brier.Skill, cells,
            [.. CostLoss.Readers.Select(loss => ExpenseOf(looks, loss))]);
    }

    private static RuleExpense ExpenseOf(IReadOnlyList<ScoredLook> looks, double loss)
    {
        return new RuleExpense(
            loss, Of(look => look.MayGo && look.Probability >= CostLoss.PaysFrom(loss)), Of(_ => true), Of(_ => false),
            looks.All(look => look.DarkCloud is null) ? []
                : [.. CloudLimits.Select(limit => new CloudRule(limit, Of(look => look.DarkCloud <= limit)))],
            looks.All(look => look.WithinFixedLimits is not null) ? Of(look => look.WithinFixedLimits!.Value) : null);

        double Of(Func<ScoredLook, bool> goes) =>
            CostLoss.ExpensePer100(ContingencyTable.Of(looks.Select(look => (goes(look), look.Usable))), loss)!.Value;
    }
}
