using NightWatch.Alerts.Policy;
using NightWatch.Alerts.Words;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Alerts.Letters.Views;

/// <summary>One order of a letter with the words to say it in.</summary>
internal sealed class NightContext(LetterOrder order, IReadOnlyList<Alternative> alternatives, Instant now, LetterLinks links)
{
    public LetterOrder Order { get; } = order;

    public NightPlan Plan => Order.Plan;

    public ToldNight Before => Order.Before;

    public IReadOnlyList<Alternative> Alternatives { get; } = alternatives;

    public Instant Now { get; } = now;

    public LetterLinks Links { get; } = links;

    public ClockWords Clock { get; } = new(order.Plan.Watch.Site.Zone);

    public UnitWords Units { get; } = new(order.Plan.Watch.Letters.Units);

    /// <summary>The class the letter is about: after the night, the one that was told.</summary>
    public VerdictClass Class => Order.Kind == LetterKind.Debrief ? Before.Told ?? Plan.Verdict.Class : Plan.Verdict.Class;

    public bool IsOff => Class == VerdictClass.NoGo;

    /// <summary>Name of the site, fit for one line.</summary>
    public string Site => PlainWords.OneLine(Plan.Watch.Site.Name);

    /// <summary>"tonight", "tomorrow night", "in 3 nights", "the night of Fri 4–Sat 5 Jun".</summary>
    public string WhenItIs(LocalDate night) => Period.DaysBetween(Now.InZone(Plan.Watch.Site.Zone).Date, night) switch
    {
        0 => "tonight",
        1 => "tomorrow night",
        var days and > 1 => $"in {days} nights",
        _ => $"the night of {ClockWords.Night(night)}",
    };

    public string When => WhenItIs(Plan.Night);
}
