using NodaTime;

namespace NightWatch.Store.Suppression;

/// <summary>When an address is given up. Enhanced status codes of RFC 3463 and the IANA registry of them.</summary>
public static class SuppressionRule
{
    /// <summary>
    /// So many refusals for good, each of another letter, over at least <see cref="StrikesOver"/> suppress. An engineering choice.
    /// </summary>
    public const int Strikes = 3;

    /// <summary>A server that is wrong for an evening must not cost a subscriber all letters.</summary>
    public static readonly Duration StrikesOver = Duration.FromHours(72);

    /// <summary>Older refusals do not count.</summary>
    public static readonly Duration StrikesAge = Duration.FromDays(30);

    // No such mailbox, no such system, a malformed or moved address, no such destination, disabled for good, null MX.
    private static readonly string[] AtOnce = ["5.1.1", "5.1.2", "5.1.3", "5.1.6", "5.1.10", "5.2.1"];

    /// <summary>One refusal is enough: the address will never take a letter.</summary>
    public static bool Suppresses(string? status) => AtOnce.Contains(status);

    /// <summary>
    /// A refusal that is about the address at all: not about policy (5.7.x), content (5.6.x), size (5.3.4) or protocol (5.5.x), which are
    /// ours to mend.
    /// </summary>
    public static bool Counts(string? status) =>
        status is null
        || !(
            status.StartsWith("5.7.", StringComparison.Ordinal)
            || status.StartsWith("5.6.", StringComparison.Ordinal)
            || status.StartsWith("5.5.", StringComparison.Ordinal)
            || status == "5.3.4");

    /// <summary>A reply in words fit for a list.</summary>
    internal static string StatusOf(ServerReply reply) =>
        reply.Enhanced ?? reply.Code?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "none";
}
