using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Expenses;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>What is to be done with a night of an archive.</summary>
internal enum NightUse
{
    /// <summary>The weather decided, and it is known.</summary>
    Scored,

    /// <summary>In the best of weather it were a no-go too: the sky or the kit decides alone.</summary>
    NotTheWeathers,

    /// <summary>The cloud of an hour of the dark is not known.</summary>
    CloudUnknown,
}

/// <summary>One look at one night.</summary>
/// <param name="Lead">Nights ahead.</param>
/// <param name="At">The instant of it.</param>
/// <param name="Class">The class that was said.</param>
/// <param name="Probability">The chance that was said.</param>
/// <param name="UsableMinutes">Minutes of good frames by the newest run; null: it does not say.</param>
/// <param name="DarkCloud">Mean cloud of the dark hours in the newest run, fraction; null: not known.</param>
/// <param name="WithinFixedLimits">By <see cref="FixedLimits"/> the night were on.</param>
/// <param name="MayGo">Nothing but the chance could keep the reader at home.</param>
/// <param name="HasForecast">There was a run to go by. Without one the look says nothing of any forecast and is not scored.</param>
internal sealed record ArchivedLook(
    int Lead,
    Instant At,
    VerdictClass Class,
    Probability Probability,
    double? UsableMinutes,
    double? DarkCloud,
    bool HasForecast,
    bool WithinFixedLimits,
    bool MayGo)
{
    /// <summary>What a plan said.</summary>
    /// <param name="lead">Nights ahead.</param>
    /// <param name="at">The instant asked for.</param>
    /// <param name="plan">By what was known then.</param>
    /// <param name="newest">The newest run known; null: none.</param>
    /// <param name="dark">First to last dark hour; null: it does not grow dark.</param>
    public static ArchivedLook Of(int lead, Instant at, NightPlan plan, ForecastSeries? newest, Interval? dark) => new(
        lead, at, plan.Verdict.Class, plan.Verdict.Probability,
        plan.Verdict.ForecastMin,
        dark is { } hours && newest is not null ? CameHours.MeanCloud(newest, hours) : null,
        newest is not null,
        FixedLimits.SayOn(plan),
        plan.Verdict.Class != VerdictClass.NoGo || plan.Verdict.Probability.Value < plan.Verdict.TradeOff!.Value.PaysFrom);

    /// <summary>To be scored by what came.</summary>
    public ScoredLook Scored(bool usable) => new(Probability.Value, MayGo, WithinFixedLimits, DarkCloud, usable);
}

/// <summary>One night of an archive: what was said, what was told, what came.</summary>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Use">Whether it is scored.</param>
/// <param name="Usable">It came usable; null: not known.</param>
/// <param name="RainUnknown">The rain of an hour of the dark is not known, which takes nothing from the night.</param>
/// <param name="GustUnknown">The same of gusts.</param>
/// <param name="Looks">By nights ahead.</param>
/// <param name="Letters">What the letters came to; null: the night is not scored on its day.</param>
internal sealed record ArchivedNight(
    LocalDate Night, NightUse Use, bool? Usable, bool RainUnknown, bool GustUnknown,
    IReadOnlyList<ArchivedLook> Looks, LetterCourse? Letters)
{
    /// <summary>Whether a look of it is scored.</summary>
    public bool IsScored(ArchivedLook look) => Use == NightUse.Scored && look.HasForecast;
}
