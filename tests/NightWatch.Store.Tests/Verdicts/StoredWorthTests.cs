using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Store.Connections;
using NightWatch.Store.Verdicts;
using NodaTime;

namespace NightWatch.Store.Tests.Verdicts;

public sealed class StoredWorthTests
{
    private static readonly Interval Run = new(Instant.FromUtc(2027, 6, 4, 21, 40), Instant.FromUtc(2027, 6, 5, 1, 10));

    [Fact]
    public void What_a_night_was_worth_and_what_had_to_be_done_first_come_back()
    {
        var bare = new Verdict
        {
            Class = VerdictClass.Marginal,
            Run = Run,
            Probability = new(0.8, ProbabilityBasis.LeadTimePrior, 1),
            Reasons = [new RunLength(Severity.Ok, Run, 90)],
        };
        var verdict = bare with
        {
            UsableMin = 161.23,
            ForecastMin = 40,
            Needs = [new Need(Factor.Power, new Mend.Packs(20), 121.5), new Need(Factor.Dew, new Mend.Heater(3, Run.Start), 60)],
            HoldsOnceDone = true,
            TradeOff = new TradeOff(3),
        };

        var read = StoreJson.Read<StoredWorth>(StoreJson.Write(StoredWorth.Of(verdict))).Onto(bare);

        Assert.Equal((161.2, 40.0, true, new TradeOff(3)), (read.UsableMin, read.ForecastMin, read.HoldsOnceDone, read.TradeOff));
        Assert.Equal(verdict.Needs, read.Needs);
    }
}
