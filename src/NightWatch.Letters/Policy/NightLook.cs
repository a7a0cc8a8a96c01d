using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NodaTime;

namespace NightWatch.Letters.Policy;

/// <summary>One pass's look at one night: what was told, what is true, what the clock says, and what follows from the three.</summary>
internal sealed record NightLook(PassKind Pass, ToldNight Before, NightPlan Plan, Instant Now)
{
    /// <summary>The class now.</summary>
    public VerdictClass Class => Plan.Verdict.Class;

    /// <summary>A go, or one once the reader has done what must be done first: news alike to who was told that the night is off.</summary>
    public bool IsGoOnceDone => Class == VerdictClass.Go || Plan.Verdict.HoldsOnceDone;

    /// <summary>The chance now.</summary>
    public double Chance => Plan.Verdict.Probability.Value;

    /// <summary>Local nights until this one; 0 on the day, negative after its evening's midnight.</summary>
    public int Lead => Period.Between(LocalToday, Plan.Night, PeriodUnits.Days).Days;

    /// <summary>The subscriber is free that evening.</summary>
    public bool IsFree => Before.Chosen || Alternatives.IsFree(Plan);

    /// <summary>The sky alone decided: no later forecast will change it.</summary>
    public bool IsCertain => Plan.Verdict.Probability.Basis == ProbabilityBasis.SkyAlone;

    /// <summary>There is something to judge by. Without a forecast a night's class says nothing new.</summary>
    public bool IsKnown => Plan.Forecast is not null || IsCertain;

    /// <summary>Which forecast run was looked at; null without a forecast.</summary>
    public Instant? Run => Plan.Forecast is { } origin ? origin.IssuedAt ?? origin.RetrievedAt : null;

    /// <summary>Until when the subscriber is still at home: as told while the night is on, else as planned now.</summary>
    public Instant LeaveBy => Before.IsOn
        ? Before.LeaveBy ?? Plan.LeaveBy ?? UsualLeaveBy
        : Plan.LeaveBy ?? Before.LeaveBy ?? UsualLeaveBy;

    /// <summary>Until when a "do not go" still saves something: the first frame would be taken now.</summary>
    public Instant SetUpEnds => LeaveBy + OutingLength;

    /// <summary>One run is enough from here on.</summary>
    public bool InLastHours => Now >= LeaveBy - TellingLimits.LastHours;

    /// <summary>Only where fewer letters than the bound went out.</summary>
    public bool MayTellGoodNews => IsFree && Before.Sent.Count < TellingLimits.MostLettersForGoodNews;

    private LocalDate LocalToday => Now.InZone(Plan.Watch.Site.Zone).Date;

    private Duration OutingLength => Duration.FromMinutes(Plan.Watch.Outing.DriveMin + Plan.Watch.Outing.SetUpMin);

    // Where no run was ever planned, the first dark minute is taken as its start.
    private Instant UsualLeaveBy =>
        (
            Plan.Sky.AstronomicalNight.Count > 0
                ? Plan.Sky.AstronomicalNight[0].Start
                : Plan.Sky.Sun.Set ?? Plan.Sky.Span.Start + Duration.FromHours(9)) - OutingLength;

    /// <summary>The present class was already seen in an earlier, different run.</summary>
    /// <param name="agrees">Whether the class that waits tells the same story.</param>
    public bool HeldForTwoRuns(Func<VerdictClass, bool> agrees) =>
        Before.Pending is { } waiting && agrees(waiting) && Run is { } run && Before.PendingRun is { } first && run != first;
}
