using System.CommandLine;
using System.Diagnostics;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Terminal;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Service.Commands;

/// <summary>The newcomer's first command: weeks of the service in seconds, every letter to be read.</summary>
internal static class RehearseCommand
{
    /// <summary>Chosen because its weeks hold one of everything; any other seed is as good a world.</summary>
    private const int DefaultSeed = 7;

    private const int DefaultDays = 45;

    public static Command Create(Shell shell)
    {
        var days = Given.Whole("--days", $"How many days; default {DefaultDays}.", 1, 400);
        var seed = Given.Whole("--seed", $"Another seed, other weather; default {DefaultSeed}.", 0, int.MaxValue);
        var climate = Given.Climate();
        var folder = Given.Text("--out", "Folder for the letters and the index page; default ./rehearsal.");
        var keep = Given.Text("--keep", "New file to keep the database in, to try 'scores', 'verdicts' and 'replay' on.", "file");
        var command = new Command("rehearse", "Weeks of the whole service on a virtual clock with invented weather; nothing is sent.")
        {
            days,
            seed,
            climate,
            folder,
            keep,
        };
        command.SetAction(
            async (given, stop) =>
            {
                var watch = Stopwatch.StartNew();
                var (count, world) = (given.GetValue(days) ?? DefaultDays, given.GetValue(seed) ?? DefaultSeed);
                var database = given.GetValue(keep) is { } file ? shell.PathOf(file) : null;
                if (File.Exists(database))
                    throw new BadInputException($"--keep: there is a file '{given.GetValue(keep)}' already; accepted: a new file.");
                var place = RehearsalFolder.Prepare(shell.PathOf(given.GetValue(folder) ?? "rehearsal"));
                var progress = new Progress(shell.Error, count);
                var story = await new RehearsalPlayer(world, given.KindOf(climate), count, place.Letters, progress.Show, database).RunAsync(
                    stop);
                place.Write(story);
                progress.End();
                RehearsalSummary.Draw(shell, story, place.Index, watch.Elapsed);
                return Exit.Ok;
            });
        return command;
    }

    /// <summary>One line that renews itself on a terminal, a line every ten days elsewhere.</summary>
    private sealed class Progress(TextWriter error, int days)
    {
        private int shown = -1;

        public void Show(LocalDate today, int day, int letters)
        {
            if (day == shown) return;
            shown = day;
            var line = Speech.ToAnybody.Language.RehearsalDay(Math.Min(day, days), days, today, letters, Speech.ToAnybody);
            if (!Console.IsErrorRedirected) error.Write("\r" + line + "   ");
            else if (day % 10 == 0) error.WriteLine(line);
        }

        public void End()
        {
            if (!Console.IsErrorRedirected) error.WriteLine();
        }
    }
}
