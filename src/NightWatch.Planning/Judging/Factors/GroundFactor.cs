using NightWatch.Planning.Ground;
using NightWatch.Weather.Rain;

namespace NightWatch.Planning.Judging.Factors;

/// <summary>What one stands on at the first frame.</summary>
internal sealed class GroundFactor : FactorRule
{
    private const string Formula = "Water balance: Kohler and Linsley 1951 for rain already fallen, FAO-56 for drying";

    public override Factor Factor => Factor.Ground;

    public override Reason Judge(NightEvidence night, ShootingPlan plan)
    {
        var ground = plan.Ground;
        var dryNeeded = night.Limits.DryGroundNeeded;
        var kind = night.Watch.Site.Ground.ToString().ToLowerInvariant();
        if (ground.AtStart == GroundState.Unknown)
        {
            return new Reason(
                Factor, dryNeeded ? Severity.Caution : Severity.Ok, null, null, null, Unit.Millimetres,
                "How wet the ground is cannot be told: " + Missing(night.Inputs.RainBefore),
                dryNeeded ? "A record of the last three days' rain and a forecast of it until the night." : null, Formula);
        }

        var severity = ground.AtStart switch
        {
            GroundState.Wet => dryNeeded ? Severity.Stop : Severity.Caution,
            GroundState.Damp => dryNeeded ? Severity.Caution : Severity.Ok,
            _ => Severity.Ok,
        };
        var text = $"The {kind} is {Word(ground.AtStart)} at the first frame ({Said.OneDecimal(ground.WaterMm ?? 0)} mm of water)"
            + (ground.AtArrival != ground.AtStart ? $", {Word(ground.AtArrival)} at arrival." : ".");
        var dry = ground.DryFrom is { } at ? $" It is dry from {Said.Clock(at, night.Zone)}." : ground.AtStart == GroundState.Dry ? "" : " It does not dry by morning.";
        var traits = GroundTraits.Of(night.Watch.Site.Ground);
        return new Reason(
            Factor, severity, null, ground.WaterMm, dryNeeded ? traits.DampMm : traits.WetMm, Unit.Millimetres, text + dry,
            severity == Severity.Ok ? null : "Boots, a ground sheet and a tripod on firm spots; or a day of dry wind and sun.", Formula);
    }

    private static string Missing(RainBefore rain) => rain.Mm is not null
        ? "the rain until the night is not known."
        : $"the rain is known for {rain.KnownHours} of the last {rain.WindowHours} hours"
            + (rain.KnownHours > 0 ? "; the record grows with every forecast." : ".");

    private static string Word(GroundState state) => state switch
    {
        GroundState.Wet => "wet",
        GroundState.Damp => "damp",
        GroundState.Dry => "dry",
        _ => "of unknown wetness",
    };
}
