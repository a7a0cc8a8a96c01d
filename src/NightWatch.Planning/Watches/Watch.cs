using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Planning.Watches;

/// <summary>Who is written to.</summary>
/// <param name="Name">How the letters address them; may be empty.</param>
/// <param name="Address">Mail address.</param>
public sealed record Subscriber(string Name, string Address)
{
    /// <summary>Equal for one subscriber, however the address is spelt.</summary>
    public string Key() => KeyOf(Address);

    /// <summary>The same for an address alone: its case and the space around it do not matter.</summary>
    public static string KeyOf(string address) => address.Trim().ToLowerInvariant();
}

/// <summary>One subscriber's standing order.</summary>
public sealed record Watch
{
    /// <summary>Short name for commands and links: lower-case letters, digits, hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>Who is written to.</summary>
    public required Subscriber Subscriber { get; init; }

    /// <summary>The site that is watched.</summary>
    public required Site Site { get; init; }

    /// <summary>What the camera is for.</summary>
    public Subject Subject { get; init; } = new Subject.GalacticCore();

    /// <summary>With what.</summary>
    public Kit Kit { get; init; } = new();

    /// <summary>The programmed motion; null: the camera stands still and follows the framing advice.</summary>
    public Move? Move { get; init; }

    /// <summary>What the sequence should be.</summary>
    public SequenceWish Sequence { get; init; } = new();

    /// <summary>From when on a night is marginal or off.</summary>
    public Limits Limits { get; init; } = new();

    /// <summary>What it takes to be there.</summary>
    public Outing Outing { get; init; } = new();

    /// <summary>When and how letters come.</summary>
    public LetterSettings Letters { get; init; } = new();

    /// <summary>Paused watches are not evaluated.</summary>
    public bool Paused { get; init; }

    /// <summary>Not evaluated before this local date at the site, and no night before it is offered; null: no such rest.</summary>
    public LocalDate? PausedUntil { get; init; }

    /// <summary>No letters at this time.</summary>
    public bool IsPausedAt(Instant now) => Paused || now.InZone(Site.Zone).Date < PausedUntil;

    /// <summary>The night is not one to go out on: the watch rests on its evening.</summary>
    public bool IsPausedOn(LocalDate night) => Paused || night < PausedUntil;
}
