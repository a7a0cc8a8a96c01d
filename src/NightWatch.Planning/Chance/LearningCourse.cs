namespace NightWatch.Planning.Chance;

/// <summary>A record gone through night by night: what it taught in the end, and what would have been said on the way.</summary>
/// <param name="Learning">What all nights together taught.</param>
/// <param name="Said">
/// For each night in the order given, for each of its rows the chance by what was known when the look was made: so many nights ahead, the
/// outcomes of the nights between are not known yet.
/// </param>
/// <param name="Proof">How that did against the prior alone.</param>
public sealed record LearningCourse(ChanceLearning Learning, IReadOnlyList<IReadOnlyList<double>> Said, LearningProof Proof)
{
    /// <summary>Goes through a record.</summary>
    /// <param name="prior">Where it begins.</param>
    /// <param name="lead">Nights ahead at which all was forecast.</param>
    /// <param name="nights">Ascending, each date once.</param>
    /// <exception cref="ArgumentException">The nights are not in order, or a place has no name.</exception>
    public static LearningCourse Of(ChancePrior prior, int lead, IReadOnlyList<ChanceNight> nights)
    {
        ArgumentNullException.ThrowIfNull(nights);
        if (nights.Zip(nights.Skip(1)).Any(pair => pair.First.Night >= pair.Second.Night))
            throw new ArgumentException("Accepted: nights in ascending order, each once.", nameof(nights));

        var learning = ChanceLearning.Start(prior, lead);
        var start = learning.ModelFor("");
        var said = new List<IReadOnlyList<double>>(nights.Count);
        var errors = new List<NightErrors>(nights.Count);
        var over = 0;
        foreach (var night in nights)
        {
            for (; nights[over].Night < night.Night.PlusDays(-lead); over++) learning = learning.After(nights[over].Rows);
            double[] chances = [.. night.Rows.Select(row => learning.ModelFor(row.Place).Of(row.Figures))];
            said.Add(chances);
            errors.Add(new NightErrors(
                night.Night,
                night.Rows.Average(row => SquaredError(start.Of(row.Figures), row.Usable)),
                night.Rows.Zip(chances, (row, chance) => SquaredError(chance, row.Usable)).Average()));
        }

        for (; over < nights.Count; over++) learning = learning.After(nights[over].Rows);
        return new LearningCourse(learning, said, LearningProof.Of(errors));
    }

    private static double SquaredError(double said, bool came) => (said - (came ? 1 : 0)) * (said - (came ? 1 : 0));
}
