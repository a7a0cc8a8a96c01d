namespace NightWatch.Planning.Verification.Outcomes;

/// <summary>What one source told of a set of nights.</summary>
/// <param name="Source">Who told.</param>
/// <param name="Usable">Nights told usable.</param>
/// <param name="Unusable">Nights told not usable.</param>
/// <param name="NotTold">Nights that it was asked about and could not tell: not enough was seen, or nobody was there.</param>
/// <param name="Silent">Nights without a word from it.</param>
public readonly record struct SourceTally(OutcomeSource Source, int Usable, int Unusable, int NotTold, int Silent)
{
    /// <summary>All nights.</summary>
    public int Nights => Usable + Unusable + NotTold + Silent;

    /// <summary>The nights of a part.</summary>
    public int Of(ToldPart part) => part switch
    {
        ToldPart.Usable => Usable,
        ToldPart.Unusable => Unusable,
        ToldPart.NotTold => NotTold,
        ToldPart.Silent => Silent,
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "Accepted: one of the parts."),
    };

    /// <summary>Counts what one source told of each night.</summary>
    /// <param name="source">Who told.</param>
    /// <param name="said">Of each night; null: not a word.</param>
    public static SourceTally Of(OutcomeSource source, IEnumerable<NightOutcome?> said)
    {
        ArgumentNullException.ThrowIfNull(said);
        var tally = new SourceTally(source, 0, 0, 0, 0);
        foreach (var outcome in said)
        {
            tally = outcome?.Came() switch
            {
                null when outcome is null => tally with { Silent = tally.Silent + 1 },
                null => tally with { NotTold = tally.NotTold + 1 },
                Verdicts.VerdictClass.NoGo => tally with { Unusable = tally.Unusable + 1 },
                _ => tally with { Usable = tally.Usable + 1 },
            };
        }

        return tally;
    }
}
