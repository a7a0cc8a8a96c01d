using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>What a letter says of the subscriber's own wish behind it.</summary>
internal static class WishWords
{
    /// <summary>What was asked for, as the one reason that matters; null: the weather's doing.</summary>
    public static string? Because(NightContext night) => night.Wish switch
    {
        Wish.SwitchedTo { To: var to } => $"You switched to {Title(night, to)}.",
        Wish.Paused { Until: var until } => $"You paused this watch until {night.Clock.Day(until)}.",
        _ => null,
    };

    /// <summary>The end of a subject line: "; switched to Sat 5 Jun", "; paused".</summary>
    public static string Short(NightContext night) => night.Wish switch
    {
        Wish.SwitchedTo { To: var to } => $", switched to {(to.Night == night.Plan.Night ? PlainWords.Shortened(PlainWords.OneLine(to.Watch.Site.Name), 20) : night.Clock.Day(to.Night))}",
        Wish.Paused { Until: var until } => $", paused until {night.Clock.Day(until)}",
        _ => "",
    };

    /// <summary>"tonight at Salt shelf", "Sat 5 Jun here".</summary>
    private static string Title(NightContext night, NightPlan other) => AlternativeViews.Title(night, new Alternative(other, null));
}
