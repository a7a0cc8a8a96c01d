using NightWatch.Letters.Policy;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Reasons;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>The blocks of names and figures.</summary>
internal static class FactViews
{
    /// <summary>Window, leave-by, chance.</summary>
    public static IReadOnlyList<FactView> KeyTimes(NightContext night)
    {
        if (night.Kind == LetterKind.Debrief) return ToldTimes(night);
        var verdict = night.Plan.Verdict;
        List<FactView> facts = [];
        if (verdict.Run is { } run)
            facts.Add(Fact(night, night.IsOff ? FactName.BestStretch : FactName.ShootingWindow, night.Language.Window(run, night.Speech)));
        else if (night.IsOff)
            facts.Add(Fact(night, FactName.ShootingWindow, night.Language.NoWindow));
        if (!night.IsOff && night.Plan.LeaveBy is { } leaveBy) facts.Add(Fact(night, FactName.LeaveBy, night.Clock.WithOffset(leaveBy)));
        facts.Add(Fact(night, FactName.Chance, night.Speech.Likely(verdict.Probability)));
        facts.AddRange(Record(night));
        if (night.Plan.Watch.Site.AccessNotes is { Length: > 0 } access && !night.IsOff)
            facts.Add(Fact(night, FactName.GettingThere, PlainWords.OneLine(access)));
        return facts;
    }

    /// <summary>What came of calls like this one; nothing where they are too few to tell.</summary>
    private static IEnumerable<FactView> Record(NightContext night)
    {
        if (night.Like is not { } like) yield break;
        yield return Fact(night, FactName.Record, night.Speech.Of(like)) with
        {
            Links = night.Links.Record(night.Plan.Watch) is { } page ? [page] : [],
        };
    }

    /// <summary>Cloud, dew and Moon for the shooting window; after the night, as they were told.</summary>
    public static IReadOnlyList<FactView> Summaries(NightContext night)
    {
        if (night.Kind == LetterKind.Debrief)
        {
            return
            [
                Told(night, FactName.Cloud, Factor.Cloud), Told(night, FactName.Dew, Factor.Dew), Told(night, FactName.Moon, Factor.Moon),
            ];
        }

        var summary = night.Plan.Summary;
        return
        [
            Fact(night, FactName.Cloud, night.Speech.Cloud(summary)),
            Fact(night, FactName.Dew, night.Speech.Dew(summary)),
            Fact(night, FactName.Moon, night.Speech.Moon(summary)),
        ];
    }

    /// <summary>The frames.</summary>
    public static IReadOnlyList<FactView> Sequence(NightContext night)
    {
        if (night.IsOff || night.Kind == LetterKind.Debrief || night.Plan.Sequence is not { } frames) return [];
        return
        [
            Fact(night, FactName.Frames, night.Language.Frames(frames, night.Speech)),
            Fact(night, FactName.FromTo, night.Clock.Span(frames.Span)),
            Fact(night, FactName.PlaysFor, night.Language.PlaysFor(frames, night.Speech)),
            Fact(night, FactName.StarTrails, night.Language.StarTrails(frames, night.Speech)),
            Fact(night, FactName.OnTheCards, night.Units.Figure(frames.StorageGb, Unit.Gigabytes)),
        ];
    }

    /// <summary>Where the forecast comes from, its age, and what must stand beside it.</summary>
    public static IReadOnlyList<FactView> Source(NightContext night)
    {
        if (night.Kind == LetterKind.Debrief) return [.. Attributions(night)];
        if (night.Plan.Forecast is not { } origin) return [Fact(night, FactName.Forecast, night.Language.NoneFetched)];
        var age = night.Language.HowOld(origin.IssuedAt, origin.RetrievedAt, origin.Age(night.Now), night.Speech);
        return [Fact(night, FactName.Forecast, age), .. Attributions(night)];
    }

    /// <summary>One line a source, whatever part of the figures it gave. The licences want changes told.</summary>
    private static IEnumerable<FactView> Attributions(NightContext night) => new[] { night.Plan.Forecast }.Concat(night.Plan.OtherForecasts)
        .OfType<ForecastOrigin>()
        .Select(origin => origin.Attribution)
        .Distinct()
        .Select(data => Fact(night, FactName.Data, night.Language.DataFrom(data.Text, data.Licence)) with
        {
            Links = data.LicenceLink is { } licence ? [data.Link, licence] : [data.Link],
        });

    private static List<FactView> ToldTimes(NightContext night)
    {
        List<FactView> facts = [];
        if (night.Before.ToldRun is { } run) facts.Add(Fact(night, FactName.ToldWindow, night.Language.Window(run, night.Speech)));
        if (night.Before.ToldProbability is { } chance)
            facts.Add(Fact(night, FactName.ToldChance, night.Language.LikelyUsable(chance, night.Speech)));
        return facts;
    }

    private static FactView Told(NightContext night, FactName name, Factor factor) => Fact(
        night,
        name,
        night.Before.Figures.FirstOrDefault(f => f.Factor == factor) is { } figure
            ? night.Language.ToldFigure(factor, figure.Value, figure.Unit, figure.Severity, night.Speech)
            : night.Language.NoFigureTold);

    private static FactView Fact(NightContext night, FactName name, string text) => new(night.Language.Of(name), text);
}
