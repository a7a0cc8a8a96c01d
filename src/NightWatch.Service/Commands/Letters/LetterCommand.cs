using System.CommandLine;
using System.Text;
using MimeKit;
using NightWatch.Letters;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Watches;
using NightWatch.Service.Hosting;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Store.Passes;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Watchkeeping.Records;
using NodaTime;

namespace NightWatch.Service.Commands.Letters;

/// <summary>Any letter, from what is stored, to be looked at: no feed is asked, nothing is kept, nothing is sent.</summary>
internal static class LetterCommand
{
    private static readonly IReadOnlyDictionary<string, LetterKind> Kinds = new Dictionary<string, LetterKind>
    {
        ["outlook"] = LetterKind.Outlook,
        ["morning-timeline"] = LetterKind.MorningTimeline,
        ["reschedule-warning"] = LetterKind.RescheduleWarning,
        ["stand-down"] = LetterKind.StandDown,
        ["debrief"] = LetterKind.Debrief,
    };

    public static Command Create(Shell shell, Option<string?> config)
    {
        string[] kinds = [.. Kinds.Keys, .. NoticeReview.Kinds];
        var kind = Given.Word("--kind", $"Which letter: {string.Join(", ", kinds)}.", kinds).Required();
        var watch = Given.Text("--watch", "Id of a kept watch.", "id").Required();
        var night = Given.Date("--night", "Local date of the evening, YYYY-MM-DD, of a letter about a night; required for one.");
        var file = Given.Text("--out", "File to write: .html, .txt or .eml.").Required();
        var at = Given.Instant("--now", "The clock reading to write at, UTC; default now.");
        var command = new Command("letter", "Writes any letter from stored state, for review; nothing is sent.")
        {
            kind,
            watch,
            night,
            file,
            at,
        };
        command.SetAction(
            async (given, stop) =>
            {
                var (word, id, path) = (given.Needed(kind), given.Needed(watch), given.Needed(file));
                LocalDate? date = Kinds.ContainsKey(word) ? given.Needed(night) : null;
                var form = FormOf(path);
                var clock = new VirtualClock(given.GetValue(at) ?? shell.Clock.GetCurrentInstant());
                var settings = AllSettings.ReadValid(shell.Directory, given.GetValue(config));
                await using var parts = await StoredServices.OpenAsync(settings, clock, clock, stop);
                var about =
                    await parts.GetRequiredService<WatchStore>().FindAsync(id, stop)
                    ?? throw new BadInputException($"--watch: there is no watch '{id}'; accepted: an id that 'watch list' shows.");
                var letter = date is { } evening
                    ? await OfNightAsync(parts, Kinds[word], about, evening, clock.GetCurrentInstant(), stop)
                    : await NoticeReview.WriteAsync(parts, word, about, settings.Service, clock.GetCurrentInstant(), stop);
                shell.WriteFile(path, "--out", form(letter));
                shell.Say($"{path}: {letter.Message.Subject}");
                return Exit.Ok;
            });
        return command;
    }

    private static Func<ReviewLetter, byte[]> FormOf(string path) => Path.GetExtension(path).ToLowerInvariant() switch
    {
        ".html" => letter => Encoding.UTF8.GetBytes(letter.Html),
        ".txt" => letter => Encoding.UTF8.GetBytes(letter.Text),
        ".eml" => letter => Bytes(letter.Message),
        _ => throw new BadInputException($"--out: '{path}' does not say which form; accepted: a name that ends in .html, .txt or .eml."),
    };

    private static byte[] Bytes(MimeMessage message)
    {
        var options = FormatOptions.Default.Clone();
        options.NewLineFormat = NewLineFormat.Dos;
        using var bytes = new MemoryStream();
        message.WriteTo(options, bytes);
        return bytes.ToArray();
    }

    private static async Task<ReviewLetter> OfNightAsync(
        ServiceProvider parts, LetterKind kind, Watch watch, LocalDate night, Instant now, CancellationToken stop)
    {
        var forecasts = parts.GetRequiredService<ForecastSource>().BeginPass(stop);
        var told = await parts.GetRequiredService<ToldNightStore>().GetAsync(watch.Id, night, stop);
        var plan = (
            await NightEvaluation.AskAsync(watch, night, forecasts, now, parts.GetRequiredService<SharedSky>(), told.Night.Told)).Plan;
        var order = LetterPolicy.ForReview(kind, told.Night, plan, now);
        var draft = new LetterDraft
        {
            Orders = [order],
            Alternatives = await parts.GetRequiredService<AlternativeFinder>().FindAsync([order], forecasts, stop),
            Tracks = await parts.GetRequiredService<RecordReader>().TracksAsync([order], now, stop),
            Now = now,
        };
        var letter = await parts.GetRequiredService<LetterWriter>().WriteAsync(draft, stop);
        return new(letter.Message, letter.Html, letter.Text);
    }
}
