using NightWatch.Planning.Verdicts;

namespace NightWatch.Planning.Judging;

/// <summary>One factor of the decision: what it looks at and its limit. Adding one is a file and a line in <see cref="FactorRules"/>, a case of <see cref="Reason"/>, and its words.</summary>
internal abstract class FactorRule
{
    /// <summary>Which.</summary>
    public abstract Factor Factor { get; }

    /// <summary>No forecast changes it: the Moon.</summary>
    public virtual bool IsOfTheSkyAlone => false;

    /// <summary>Its share in the choice of the run; null where it is only judged afterwards.</summary>
    public virtual RunScale? Scale(NightEvidence night) => null;

    /// <summary>Its finding over the chosen run; null where it does not apply to this watch.</summary>
    public abstract Reason? Judge(NightEvidence night, ShootingPlan plan);
}
