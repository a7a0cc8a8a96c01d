using System.Globalization;
using MimeKit;
using NightWatch.Service.Terminal;
using NightWatch.Store.Outbox;
using NightWatch.Store.Suppression;
using NightWatch.Words;
using NodaTime;
using Spectre.Console;

namespace NightWatch.Service.Commands.Operations;

/// <summary>Letters for people.</summary>
internal static class OutboxTable
{
    public static string Word(OutboxState state) => state.ToString().ToLowerInvariant();

    public static void Draw(Shell shell, IReadOnlyList<OutboxEntry> letters) => shell.Draw(console =>
    {
        if (letters.Count == 0)
        {
            console.WriteLine("There are none.");
            return;
        }

        var table = new Table()
            .Border(TableBorder.Simple)
            .AddColumns("Id", "Kind", "State", "To", "Queued", "Of use until", "Tries", "Last answer");
        foreach (var letter in letters)
        {
            string[] row =
            [
                letter.Id.ToString(CultureInfo.InvariantCulture),
                    letter.Kind,
                    Word(letter.State),
                    letter.Recipient,
                    Minute(letter.CreatedAt),
                    Minute(letter.NotAfter),
                    letter.Attempt.ToString(CultureInfo.InvariantCulture),
                    letter.LastReply?.Text ?? letter.RemoteQueueId ?? "",
                ];
            table.AddRow(row.Select(cell => new Text(cell)));
        }

        console.Write(table);
    });

    public static void Draw(Shell shell, OutboxEntry letter, ReadOnlyMemory<byte>? bytes) =>
        shell.Draw(console =>
        {
            var message = bytes is { } whole ? MimeMessage.Load(new MemoryStream(whole.ToArray())) : null;
            var table = new Table().Border(TableBorder.None).HideHeaders().AddColumns("", "");
            foreach (
                var (name, value) in new (string, string)[]
                {
                    ("Letter", FormattableString.Invariant($"{letter.Id}, {letter.Kind}, {Word(letter.State)}")),
                    ("To", letter.Recipient),
                    ("Message-ID", letter.MessageId),
                    ("Queued", Minute(letter.CreatedAt)),
                    ("Not before", Minute(letter.NotBefore)),
                    ("Of use until", Minute(letter.NotAfter)),
                    ("Tries", Speech.ToAnybody.Language.Tries(letter.Attempt, letter.AmbiguousCount)),
                    ("Last answer", letter.LastReply is { } reply ? $"{reply.Code} {reply.Enhanced} {reply.Text}".Trim() : "none"),
                    ("Accepted as", letter.RemoteQueueId ?? "not yet"),
                    ("Subject", message?.Subject ?? "(the text has gone with age)"),
                })
            {
                table.AddRow(new Text(name), new Text(value));
            }

            console.Write(table);
            if (message?.TextBody is { } text) console.Write(new Text("\n" + text.ReplaceLineEndings("\n")));
        });

    private static string Minute(Instant at) => at.ToString("uuuu-MM-dd HH:mm'Z'", CultureInfo.InvariantCulture);
}

/// <summary>One letter as a document; without its bytes, which --eml gives.</summary>
internal sealed record LetterDocument(
    long Id,
    string Kind,
    string State,
    string Recipient,
    string MessageId,
    Instant CreatedAt,
    Instant NotBefore,
    Instant NotAfter,
    int Attempt,
    int AmbiguousCount,
    ServerReply? LastReply,
    string? RemoteQueueId)
{
    public static LetterDocument Of(OutboxEntry letter) =>
        new(
            letter.Id,
            letter.Kind,
            OutboxTable.Word(letter.State),
            letter.Recipient,
            letter.MessageId,
            letter.CreatedAt,
            letter.NotBefore,
            letter.NotAfter,
            letter.Attempt,
            letter.AmbiguousCount,
            letter.LastReply,
            letter.RemoteQueueId);
}
