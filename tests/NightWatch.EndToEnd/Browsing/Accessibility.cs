using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace NightWatch.EndToEnd.Browsing;

/// <summary>The rules of WCAG 2.2 at level AA and axe-core's best practice, on a page as it stands with all its folds open.</summary>
internal static class Accessibility
{
    private static readonly string[] All = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

    private const string Ask =
        """
        async values => {
          const found = await axe.run(document, { runOnly: { type: 'tag', values }, resultTypes: ['violations'] });
          if (found.passes.length === 0) throw new Error('No rule was tried.');
          return found.violations.map(one => `${one.id}: ${one.help} (${one.nodes.slice(0, 3).map(node => node.html).join(', ')})`);
        }
        """;

    private static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    /// <summary>Fails with every rule that the page breaks on a small phone or a wide window, on light or dark ground.</summary>
    /// <param name="page">It has been loaded, and has no frames.</param>
    /// <param name="name">The page, for the message.</param>
    public static async Task CheckAsync(IPage page, string name)
    {
        await page.EvaluateAsync("() => { for (const part of document.querySelectorAll('details')) part.open = true; }");
        Assert.Equal(0, await page.Locator("iframe").CountAsync());
        // Asked for directly: the package's own call opens a second page for each answer, which takes longer than the rules do.
        await page.EvaluateAsync(Axe);
        foreach (var width in (int[])[1200, 320])
        {
            await page.SetViewportSizeAsync(width, width < 600 ? 844 : 900);
            foreach (var scheme in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark])
            {
                await page.EmulateMediaAsync(new() { ColorScheme = scheme });
                var broken = await page.EvaluateAsync<string[]>(Ask, All);
                Assert.True(broken.Length == 0, $"{name}, {width} pixels, {scheme}: {string.Join("; ", broken)}");
            }

            var wide = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth");
            Assert.True(wide <= width, $"{name} is {wide} pixels wide in a window of {width}.");
        }
    }
}
