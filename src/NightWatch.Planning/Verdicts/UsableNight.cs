using NightWatch.Planning.Reasons;

namespace NightWatch.Planning.Verdicts;

/// <summary>The chance that the night is usable, and from where going pays the reader and a go is said, fractions.</summary>
public sealed record UsableNight(Severity Severity, double Probability, double PaysFrom, double GoFrom)
    : Reason(
        Factor.Chance,
        Severity,
        null,
        Probability,
        Severity == Severity.Stop ? PaysFrom : GoFrom,
        Unit.Fraction,
        Sources.Formula.ChanceModel);
