using NightWatch.Letters.Links;
using NightWatch.Planning.Watches;
using NightWatch.Words;

namespace NightWatch.Letters.Views;

/// <summary>What an upgrade changed, told once, in two lines.</summary>
/// <param name="Told">How nights are told now.</param>
/// <param name="Page">Where the reader sets what a night is worth; null without pages.</param>
/// <param name="Moon">What became of the Moon's old limit.</param>
public sealed record NewsView(string Told, LinkView? Page, string Moon)
{
    internal static NewsView Of(Watch watch, LetterLinks links)
    {
        var language = Speech.To(watch).Language;
        var page = links.Edit(watch) is { } url ? new LinkView(language.SetOnPage, url) : null;
        var (told, moon) = language.NewScale(watch.Outing.DrivesPerLostNight, page is not null);
        return new NewsView(told, page, moon);
    }
}
