using MimeKit;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Notices;
using NodaTime;

namespace NightWatch.Store.Outbox;

/// <summary>One watch and one night.</summary>
public readonly record struct WatchNight(string WatchId, LocalDate Night);

/// <summary>A letter to be queued, rendered once: every attempt sends these bytes under this Message-ID to this one recipient.</summary>
public sealed record OutboxDraft
{
    /// <summary>kind|watches|night|recipient|revision. Unique: planning a night twice queues one letter.</summary>
    public required string DedupeKey { get; init; }

    /// <summary>Without the angle brackets.</summary>
    public required string MessageId { get; init; }

    /// <summary>What kind, for lists and metrics ("Outlook", ...).</summary>
    public required string Kind { get; init; }

    /// <summary>The one recipient: a mail address, or the https address of a call.</summary>
    public required string Recipient { get; init; }

    /// <summary>How it travels.</summary>
    public LetterChannel Channel { get; init; }

    /// <summary>Goes also to an address that refused letters before: its owner asks for this one now.</summary>
    public bool ToRefusingToo { get; init; }

    /// <summary>The whole message, CRLF line ends; of a call its JSON body.</summary>
    public required ReadOnlyMemory<byte> Mime { get; init; }

    /// <summary>Not to be sent earlier (quiet hours).</summary>
    public required Instant NotBefore { get; init; }

    /// <summary>Later than this it is dropped.</summary>
    public required Instant NotAfter { get; init; }

    /// <summary>
    /// What it is about. An unsent older letter to the same recipient that is about nothing else is superseded by it.
    /// </summary>
    public IReadOnlyList<WatchNight> About { get; init; } = [];

    /// <summary>The subscriber whom it tells what an upgrade changed, which is told once; null: it does not.</summary>
    public string? TellsNewsTo { get; init; }

    /// <summary>Freezes a written letter.</summary>
    /// <param name="letter">As written; its message is prepared for 7-bit transport here, so that nothing changes it later.</param>
    /// <param name="about">The watches and nights it speaks of.</param>
    /// <param name="notBefore">Not earlier than this.</param>
    /// <exception cref="ArgumentException">Not exactly one recipient, or no Message-ID.</exception>
    public static OutboxDraft Of(Letter letter, IReadOnlyList<WatchNight> about, Instant notBefore)
    {
        ArgumentNullException.ThrowIfNull(letter);
        return Of(letter.DedupeKey, letter.Kind.ToString(), letter.Message, notBefore, letter.NotAfter) with { About = about };
    }

    /// <summary>Freezes a written notice.</summary>
    /// <param name="notice">As written.</param>
    /// <param name="notBefore">Not earlier than this.</param>
    public static OutboxDraft Of(Notice notice, Instant notBefore)
    {
        ArgumentNullException.ThrowIfNull(notice);
        return Of(notice.DedupeKey, notice.Kind, notice.Message, notBefore, notice.NotAfter) with { ToRefusingToo = notice.IsAskedFor };
    }

    private static OutboxDraft Of(string key, string kind, MimeMessage message, Instant notBefore, Instant notAfter)
    {
        // One refused recipient would stop the letter to the others, and a retry would reach some of them twice.
        if (message.GetRecipients(true) is not [var recipient])
            throw new ArgumentException($"Letter {key} must have exactly one recipient.", nameof(message));
        if (string.IsNullOrEmpty(message.MessageId)) throw new ArgumentException($"Letter {key} has no Message-ID.", nameof(message));

        message.Prepare(EncodingConstraint.SevenBit);
        using var mime = new MemoryStream();
        message.WriteTo(LineEnds, mime);
        return new()
        {
            DedupeKey = key,
            MessageId = message.MessageId,
            Kind = kind,
            Recipient = recipient.Address,
            Mime = mime.ToArray(),
            NotBefore = notBefore,
            NotAfter = notAfter,
        };
    }

    private static FormatOptions LineEnds
    {
        get
        {
            var options = FormatOptions.Default.Clone();
            options.NewLineFormat = NewLineFormat.Dos;
            return options;
        }
    }
}
