using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;

namespace NightWatch.Letters.Tests.Plans;

public sealed class ScanTests
{
    [Fact]
    public void Scan()
    {
        var lines = new System.Collections.Concurrent.ConcurrentBag<string>();
        var without = Ines.CoreWatch with { Kit = Ines.CoreWatch.Kit with { DewHeaterW = 0 } };
        var nochecks = Ines.CoreWatch with { Letters = new LetterSettings { SameDayChecks = [] } };
        var from = int.Parse(Environment.GetEnvironmentVariable("SCAN_FROM") ?? "1", null);
        var to = int.Parse(Environment.GetEnvironmentVariable("SCAN_TO") ?? "400", null);
        for (var seed = from; seed <= to; seed++)
        {
            var story = new Story(seed, Ines.CoreWatch);
            var kinds = story.Kinds;
            var at = story.PlanAt(Ines.At(7));
            lines.Add($"{seed} core {string.Join(",", kinds)} | 7h {at.Verdict.Class} {at.Verdict.Probability.Value:0.00} {at.Verdict.ForecastMin:0} dewheld {at.Lens?.HeaterOn}");
            if (kinds.Count > 0 && Environment.GetEnvironmentVariable("SCAN_CORE") is null)
            {
                var w = new Story(seed, without);
                if (w.Kinds.Any(k => k.StartsWith("Outlook:Marginal", StringComparison.Ordinal)))
                    lines.Add($"{seed} dew {string.Join(",", w.Kinds)} needs {string.Join(",", w.Letter(LetterKind.Outlook).Orders[0].Plan.Verdict.Needs.Select(n => n.Factor))}");
                var t = new Story(seed, nochecks);
                if (t.Kinds.Any(k => k.StartsWith("StandDown", StringComparison.Ordinal)))
                    lines.Add($"{seed} thunder {string.Join(",", t.Kinds)} deciding {t.Letter(LetterKind.StandDown).Orders[0].Plan.Verdict.Deciding.Factor}");
            }
        }

        File.WriteAllLines(Environment.GetEnvironmentVariable("SCAN_OUT") ?? "/tmp/nw/scan.txt", lines);
    }
}
