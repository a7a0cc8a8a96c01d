using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Records;
using NightWatch.Watchkeeping.Replays;
using NightWatch.Words;
using Spectre.Console;
using static NightWatch.Service.Terminal.ScoreCells;

namespace NightWatch.Service.Commands.Replays;

/// <summary>A replay for people.</summary>
internal static class ReplayTables
{
    private const int MostNights = 60;

    private static readonly ILanguage Words = Speech.ToAnybody.Language;

    public static void Draw(Shell shell, ReplayScores scores, IReadOnlyList<ReplayedNight> nights, bool otherLimits, TimeSpan took) =>
        shell.Draw(console =>
        {
            console.WriteLine(Words.ReplayHeading(scores.Watches, scores.Nights, scores.Looks, scores.Same, took));
            if (scores.Lost > 0) console.WriteLine(Words.LooksLost(scores.Lost));
            if (scores.Looks == 0) return;
            if (!otherLimits && scores.Same < scores.Looks)
                console.WriteLine(
                    "With the same limits a look that comes out different shows a change of the code, of the watch or of its site.");
            console.WriteLine();
            console.WriteLine("Going by the letters, on nights whose outcome is known. Brackets: 95 % by Wilson 1927");
            var table = WithColumns(
                "", "Letters", "Hit", "Drive for nothing", "Night lost", "Rightly at home", "Usable of called, %", "Called of usable, %");
            Row(table, "as told", scores.WasLetters, scores.Was);
            Row(table, "replayed", scores.IsLetters, scores.Is);
            console.Write(table);
            DrawTurned(console, scores.Turned);
            if (scores.Watches == 1) DrawNights(console, [.. nights.Where(night => !night.IsSame)]);
        });

    private static void Row(Table table, string name, int letters, RecordedCalls calls) =>
        table.AddRow(
            name,
            $"{letters}",
            $"{calls.Table.Hits}",
            $"{calls.Table.FalseAlarms}",
            $"{calls.Table.Misses}",
            $"{calls.Table.CorrectRejections}",
            Share(calls.UsableOfCalled),
            Share(calls.CalledOfUsable));

    private static void DrawTurned(IAnsiConsole console, IReadOnlyList<ReplayedNight> turned)
    {
        if (turned.Count == 0)
        {
            console.WriteLine("The last word is the same on every night.");
            return;
        }

        console.WriteLine(Words.NightsTurned(turned.Count, Math.Min(turned.Count, MostNights)));
        var table = new Table()
            .Border(TableBorder.Simple)
            .AddColumn("Night")
            .AddColumn("Watch")
            .AddColumn("Told")
            .AddColumn("Replayed")
            .AddColumn("Came")
            .AddColumn("Why now");
        foreach (var night in turned.Take(MostNights))
        {
            table.AddRow(
                new Text($"{night.Night:R}"),
                new Text(night.WatchId),
                new Text(Words.LastWord(night.WasOn)),
                new Text(Words.LastWord(night.IsOn)),
                new Text(night.Outcome?.Word() ?? "not known"),
                new Text(night.Looks[^1].Why));
        }

        console.Write(table);
    }

    private static void DrawNights(IAnsiConsole console, IReadOnlyList<ReplayedNight> changed)
    {
        if (changed.Count == 0) return;
        console.WriteLine(Words.LooksThatDiffer(changed.Count > MostNights ? MostNights : null));
        var table = new Table()
            .Border(TableBorder.Simple)
            .AddColumn("Night")
            .AddColumn("At")
            .AddColumn("Pass")
            .AddColumn("Was")
            .AddColumn("Is")
            .AddColumn("Letter then")
            .AddColumn("Letter now");
        foreach (var night in changed.Take(MostNights))
        {
            foreach (var look in night.Looks.Where(look => !look.IsSame))
            {
                table.AddRow(
                    $"{night.Night:R}",
                    InstantText.Of(look.At),
                    look.Pass.ToString(),
                    Words.VerdictCell(look.Was, look.WasLikely),
                    Words.VerdictCell(look.Is, look.IsLikely),
                    look.WasLetter is { } then ? TradeWords.Spaced(then) : "-",
                    look.IsLetter is { } now ? TradeWords.Spaced(now) : "-");
            }
        }

        console.Write(table);
    }
}
