using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using NightWatch.Alerts.Letters.Views;

namespace NightWatch.Alerts.Letters.Layout;

/// <summary>The letter as HTML with its styles inlined.</summary>
internal sealed class HtmlLetter : IDisposable
{
    private readonly ServiceProvider services = new ServiceCollection().BuildServiceProvider();
    private readonly HtmlRenderer renderer;

    public HtmlLetter() => renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);

    /// <summary>Lays a letter out.</summary>
    /// <param name="letter">What it says.</param>
    /// <param name="charts">Sources of the charts, one a night; empty: none.</param>
    public async Task<string> OfAsync(LetterView letter, IReadOnlyList<string> charts)
    {
        var parameters = ParameterView.FromDictionary(new Dictionary<string, object?> { [nameof(LetterPage.Letter)] = letter, [nameof(LetterPage.Charts)] = charts });
        var html = await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<LetterPage>(parameters)).ToHtmlString());
        // The classes stay: the block for dark screens hangs on them.
        return PreMailer.Net.PreMailer.MoveCssInline(html, removeStyleElements: true, ignoreElements: "#dark").Html;
    }

    public void Dispose()
    {
        renderer.Dispose();
        services.Dispose();
    }
}
