using NightWatch.Letters.Policy;
using NightWatch.Pictures;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>From one order to what the letter says of its night.</summary>
internal static class NightViews
{
    /// <summary>Makes the view; a short one leaves out what only the best nights of a long letter carry.</summary>
    public static NightView Of(NightContext night, bool isShort)
    {
        var asks = night.Kind == LetterKind.Debrief;
        var wished = night.StandsDownByWish;
        var goes = !night.IsOff && !asks && !isShort;
        return new NightView
        {
            Language = night.Language,
            Plan = night.Plan,
            Class = night.Class,
            Verdict = wished ? night.Language.StoodDown : asks ? night.Language.ToldAs(night.Class) : night.Speech.Of(night.Class),
            Place = night.Language.Heading(night.Site, night.Spoken, night.Speech),
            Headline = HeadWords.Headline(night),
            Because = HeadWords.Because(night),
            Next = HeadWords.Next(night),
            Hazards = asks || wished ? [] : HazardViews.Of(night),
            Changes = ChangeViews.Of(night),
            ToldBefore = ChangeViews.ToldBefore(night),
            KeyTimes = wished ? [] : FactViews.KeyTimes(night),
            Summaries = FactViews.Summaries(night),
            Alternatives = AlternativeViews.Of(night),
            Timeline = goes ? Timeline(night) : [],
            Sequence = goes ? FactViews.Sequence(night) : [],
            Field = goes ? FieldFacts.Of(night.Plan) : [],
            Packing = goes && night.Kind != LetterKind.Outlook ? [.. night.Plan.Packing.Select(night.Speech.Of)] : [],
            Reasons = asks || isShort || wished ? [] : Reasons(night),
            Source = FactViews.Source(night),
            Page = night.Links.Night(night.Plan.Watch, night.Plan.Night) is { } url ? new LinkView(night.Language.WholeNight, url) : null,
            Snooze = asks || wished || night.Kind is null or LetterKind.StandDown ? null : Snooze(night),
            Answers = asks ? AnswersOf(night) : [],
            ChartSays = asks || isShort || wished ? null : NightChart.Says(night.Plan),
            FrameSays = goes ? FrameChart.Says(night.Plan) : null,
        };
    }

    private static LinkView? Snooze(NightContext night) =>
        night.Links.Snooze(night.Plan.Watch, night.Plan.Night) is { } url
            ? new LinkView(night.Language.NoMoreLetters(night.Plan.Night, night.Speech), url)
            : null;

    private static IReadOnlyList<TimelineDayView> Timeline(NightContext night) =>
        [
            .. night
                .Plan.Timeline.GroupBy(e => night.Clock.Day(e.At))
                .Select(day => new TimelineDayView(
                    night.Language.TimelineDay(day.Key, [.. day.Select(e => night.Clock.Abbreviation(e.At)).Distinct()]),
                    [
                        .. day.Select(e => new TimelineRowView(
                            night.Clock.Time(e.At), night.Speech.Title(e), night.Speech.Why(e), HeadWords.IsAction(e.Step))),
                    ])),
        ];

    private static IReadOnlyList<ReasonView> Reasons(NightContext night) =>
    [
        .. night.Plan.Verdict.Reasons.Select(r => new ReasonView(
            r is { IsUnknown: true, Severity: Severity.Ok } ? night.Language.Unknown : night.Speech.Of(r.Severity),
            night.Speech.Of(r.Factor),
            night.Speech.Of(r),
            r.When is { HasStart: true, HasEnd: true } when && when != night.Plan.Verdict.Run ? night.Clock.ShortSpan(when) : null,
            r.Severity > Severity.Ok ? night.Speech.Fix(r) : null,
            night.Speech.Source(r))
        {
            Style = VerdictStyle.Of(r),
        }),
    ];

    private static IReadOnlyList<LinkView> AnswersOf(NightContext night) =>
        [
            .. DebriefAnswers
                .In(night.Language)
                .Select(a => (a.Text, Url: night.Links.Debrief(night.Plan.Watch, night.Plan.Night, a.Outcome.Word())))
                .Where(a => a.Url is not null)
                .Select(a => new LinkView(a.Text, a.Url!)),
        ];
}
