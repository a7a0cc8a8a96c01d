using NightWatch.Letters.Links;
using NightWatch.Letters.Views;
using NightWatch.Pages.Address;
using NightWatch.Pictures;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Words;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Pages.Nights;

/// <summary>Everything the night's page shows; its components only lay it out.</summary>
public sealed record NightPageModel
{
    /// <summary>The letters' view of the night.</summary>
    public required NightView View { get; init; }

    /// <summary>What it stands on; null: on what is kept now.</summary>
    public required string? Basis { get; init; }

    /// <summary>The factors that hold.</summary>
    public required string WithinLimits { get; init; }

    /// <summary>The Sun is up after it.</summary>
    public required bool IsOver { get; init; }

    /// <summary>No letters about it, as the subscriber wished.</summary>
    public required bool IsSnoozed { get; init; }

    /// <summary>Says so.</summary>
    public required string Snoozed { get; init; }

    /// <summary>That the watch rests and does not look at the night; null: it looks, or the night is over.</summary>
    public MarkedSentence? Rest { get; init; }

    /// <summary>"Fri 4–Sat 5 Jun, The threshing floor", for the window's title.</summary>
    public required string Title { get; init; }

    /// <summary>When the page was written, in sentences.</summary>
    public required string Written { get; init; }

    /// <summary>When the page was written, for its script: a copy says how old it is.</summary>
    public required Instant Now { get; init; }

    /// <summary>The chart as an SVG element.</summary>
    public required string Chart { get; init; }

    /// <summary>Where time runs in it; null: nothing to draw.</summary>
    public required ChartPlot? Plot { get; init; }

    /// <summary>The quantities along the grid.</summary>
    public required IReadOnlyList<NightReading> Readings { get; init; }

    /// <summary>Clock time of each step, "23:40".</summary>
    public required IReadOnlyList<string> Clock { get; init; }

    /// <summary>The step that is read out first: now during the night, else the middle of the run.</summary>
    public required int FirstStep { get; init; }

    /// <summary>The grid for the script.</summary>
    public required string GridJson { get; init; }

    /// <summary>The path across the frame as an SVG element; null: nothing is framed.</summary>
    public required string? Frame { get; init; }

    /// <summary>Its places, one a picked frame.</summary>
    public required IReadOnlyList<FrameMark> Marks { get; init; }

    /// <summary>Height of that picture, logical pixels.</summary>
    public required double FrameHeight { get; init; }

    /// <summary>The places for the script.</summary>
    public required string FramesJson { get; init; }

    /// <summary>Formulas and conventions behind the figures that no reason names.</summary>
    public required IReadOnlyList<FactView> Sources { get; init; }

    /// <summary>Where the forms and the other pages are.</summary>
    public required NightPageLinks Links { get; init; }

    /// <summary>The word the photographer chose after the night; null: none yet.</summary>
    public NightOutcome? Said { get; init; }

    /// <summary>Makes the page of a night.</summary>
    /// <param name="found">The night.</param>
    /// <param name="root">Where the pages stand.</param>
    /// <param name="signer">Signs the links to other nights and pages.</param>
    internal static NightPageModel Of(FoundNight found, PageRoot root, ILinkSigner signer)
    {
        var plan = found.Plan;
        var speech = Speech.To(plan.Watch);
        var words = speech.Language;
        var readings = NightReadings.Of(plan);
        string[] clock = [.. plan.Conditions.Select(step => speech.Clock.Time(step.At))];
        var view = PageViews.Of(plan, found.Told, found.Alternatives, found.Now, new LetterLinks(root.Base, signer), found.Track);
        var alone = found.Basis == NightBasis.VerdictAlone;
        var marks = alone ? [] : FrameChart.MarksOf(plan);
        return new NightPageModel
        {
            // Of a verdict whose forecast is gone, nothing is shown that only the forecast could tell.
            View = alone
                ? view with
                {
                    Timeline = [],
                    Sequence = [],
                    Field = [],
                    Packing = [],
                    Summaries = [],
                    FrameSays = null,
                    Source = [],
                }
                : view,
            Title = $"{view.Verdict}, {view.Place}",
            Basis = words.Of(found.Basis),
            WithinLimits = words.WithinLimits([
                .. plan.Verdict.Reasons.Where(reason => reason.Severity == Severity.Ok).Select(reason => reason.Factor),
            ]),
            IsOver = found.IsOver,
            IsSnoozed = found.Told.Snoozed,
            Snoozed = words.NightSnoozed(found.IsOver),
            Rest = !found.IsOver && plan.Watch.IsPausedOn(plan.Night)
                ? words.NoLettersWhileResting(plan.Watch.Paused ? null : plan.Watch.PausedUntil, speech)
                : null,
            Written = words.PageWritten(found.Now, speech),
            Now = found.Now,
            Chart = NightChart.Svg(plan),
            Plot = NightChart.PlotOf(plan),
            Readings = readings,
            Clock = clock,
            FirstStep = FirstStepOf(found),
            GridJson = NightGridDocument.Of(plan, readings, clock),
            Frame = alone ? null : FrameChart.Svg(plan),
            Marks = marks,
            FrameHeight = FrameChart.HeightPx(plan) ?? 0,
            FramesJson = NightGridDocument.OfFrames(marks),
            Sources = PlanSources.Of(plan),
            Links = NightPageLinks.Of(plan.Watch, plan.Night, root, signer),
            Said = found.Said,
        };
    }

    private static int FirstStepOf(FoundNight found)
    {
        var steps = found.Plan.Conditions;
        if (steps.Count == 0) return 0;
        var at = found.Now > steps[0].At && found.Now < steps[^1].At ? found.Now
            : found.Plan.Verdict.Run is { } run ? run.Start + run.Duration / 2
            : steps[steps.Count / 2].At;
        return (int)Math.Clamp((at - steps[0].At) / NightGrid.Step, 0, steps.Count - 1);
    }
}

/// <summary>Where the page leads, by addresses within the pages.</summary>
/// <param name="Night">The night.</param>
/// <param name="Debrief">Takes the answer of the morning after.</param>
/// <param name="Snooze">Stops and restarts the letters about the night.</param>
/// <param name="Switch">Takes another night instead; which one stands behind it.</param>
/// <param name="Season">The site's dark calendar.</param>
/// <param name="Record">How the watch's forecasts have held.</param>
public sealed record NightPageLinks(string Night, string Debrief, string Snooze, string Switch, string Season, string Record)
{
    internal static NightPageLinks Of(Watch watch, LocalDate night, PageRoot root, ILinkSigner signer)
    {
        var page = root.To($"watches/{Uri.EscapeDataString(watch.Id)}/nights/{LocalDatePattern.Iso.Format(night)}");
        var (key, watchKey) = (LetterLinks.NightKey(signer, watch, night), LetterLinks.WatchKey(signer, watch));
        string OfWatch(string name) => root.To($"watches/{Uri.EscapeDataString(watch.Id)}/{name}?k={watchKey}");
        return new NightPageLinks(
            $"{page}?k={key}",
            $"{page}/debrief?k={key}",
            $"{page}/snooze?k={key}",
            $"{page}/switch?k={key}",
            OfWatch("season"),
            OfWatch("record"));
    }
}
