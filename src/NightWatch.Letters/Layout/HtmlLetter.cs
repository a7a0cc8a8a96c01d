using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using NightWatch.Letters.Notices;
using NightWatch.Letters.Views;

namespace NightWatch.Letters.Layout;

/// <summary>The letter as HTML with its styles inlined.</summary>
internal sealed partial class HtmlLetter : IDisposable
{
    /// <summary>Pixels that a chart takes where no style is read.</summary>
    public const int ChartWidth = 600;

    private readonly ServiceProvider services = new ServiceCollection().BuildServiceProvider();

    /// <summary>Lays a letter out.</summary>
    /// <param name="letter">What it says.</param>
    /// <param name="charts">Sources of the charts, one a night; empty: none.</param>
    /// <param name="frames">Sources of the pictures of the path across the frame, one a night; empty: none.</param>
    public Task<string> OfAsync(LetterView letter, IReadOnlyList<string> charts, IReadOnlyList<string> frames) => OfAsync<LetterPage>(new()
    {
        [nameof(LetterPage.Letter)] = letter,
        [nameof(LetterPage.Charts)] = charts,
        [nameof(LetterPage.Frames)] = frames,
    });

    /// <summary>Lays a notice out.</summary>
    public Task<string> OfAsync(NoticeView notice) => OfAsync<NoticePage>(new() { [nameof(NoticePage.Notice)] = notice });

    private async Task<string> OfAsync<T>(Dictionary<string, object?> values)
        where T : IComponent
    {
        var parameters = ParameterView.FromDictionary(values);
        // Each letter has a renderer of its own: a renderer keeps what it has rendered until it is disposed, and renders one letter at a
        // time.
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        var html = await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<T>(parameters)).ToHtmlString());
        // The classes stay, because the rules for dark screens name them.
        var inlined = PreMailer.Net.PreMailer.MoveCssInline(html, removeStyleElements: true, ignoreElements: "#dark").Html;
        return FigureAndUnit().Replace(PictureWidth().Replace(inlined, $"${{1}}{ChartWidth}${{2}}"), "&nbsp;");
    }

    // The inliner makes attributes of some styles, but an image's width is a count of pixels (HTML, "dimension attributes").
    [GeneratedRegex(@"(<img\b[^>]*\bwidth="")100%("")", RegexOptions.CultureInvariant)]
    private static partial Regex PictureWidth();

    // "28 %" never breaks at the end of a phone's line.
    [GeneratedRegex(@"(?<=\d) (?=(%|°C|°F|m/s|mph|mm|km|mi|in|ft|min|mag|Wh|GB|px|[hsWmK])(?![\w/]))", RegexOptions.CultureInvariant)]
    private static partial Regex FigureAndUnit();

    public void Dispose() => services.Dispose();
}
