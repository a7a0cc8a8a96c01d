using System.Net;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using MimeKit;
using NightWatch.Service.Ticking;
using NodaTime;

namespace NightWatch.Pages.Tests;

/// <summary>A page as it came.</summary>
internal sealed record Visit(HttpResponseMessage Answer, string Body)
{
    public HttpStatusCode Status => Answer.StatusCode;

    public IHtmlDocument Page { get; } = new HtmlParser().ParseDocument(Body);

    public string Heading => Page.QuerySelector("h1")?.TextContent ?? "";
}

/// <summary>A browser without script: keeps cookies, fills in forms, follows what a form answers.</summary>
internal sealed partial class Visitor : IDisposable
{
    public const string Place = "-24.7553, 15.2905";

    private readonly PagesWorld world;
    private readonly CookieContainer cookies = new();
    private readonly HttpClient http;

    public Visitor(PagesWorld world)
    {
        this.world = world;
        http = new HttpClient(new HttpClientHandler { CookieContainer = cookies, AllowAutoRedirect = false }) { BaseAddress = world.Base };
    }

    /// <summary>From which address, as a proxy says.</summary>
    public string? From { get; init; }

    public CookieContainer Cookies => cookies;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public Task<Visit> GetAsync(string path) => SendAsync(new HttpRequestMessage(HttpMethod.Get, path));

    public Task<Visit> PostAsync(string path, IEnumerable<KeyValuePair<string, string>> fields) =>
        SendAsync(new HttpRequestMessage(HttpMethod.Post, path) { Content = new FormUrlEncodedContent(fields) });

    /// <summary>Sends a form of a page as it stands, but for what is given; the button's name and value are among that.</summary>
    public Task<Visit> SubmitAsync(IHtmlDocument page, string selector, params (string Name, string Value)[] given)
    {
        var form =
            page.QuerySelector<IHtmlFormElement>(selector)
            ?? throw new InvalidOperationException($"There is no {selector} on the page: {page.Title}.");
        return PostAsync(form.GetAttribute("action")!, FieldsOf(form, given));
    }

    /// <summary>The same, following the answer where it leads.</summary>
    public async Task<Visit> SubmitAndFollowAsync(IHtmlDocument page, string selector, params (string Name, string Value)[] given)
    {
        var answer = await SubmitAsync(page, selector, given);
        return answer.Status == HttpStatusCode.SeeOther ? await GetAsync(answer.Answer.Headers.Location!.ToString()) : answer;
    }

    /// <summary>Signs up and confirms, as a person would, and is signed in then.</summary>
    public async Task<Visit> SubscribeAsync(string address, string name = "The Salt Pan")
    {
        var form = await GetAsync($"new?place={Uri.EscapeDataString(Place)}&name={Uri.EscapeDataString(name)}");
        Assert.Equal(
            HttpStatusCode.OK,
            (
                await SubmitAsync(
                    form.Page,
                    "form[action$='/new']",
                    ("site.position.elevationM", "570"),
                    ("subject.kind", "stars"),
                    ("address", address),
                    ("do", "ask"))).Status);
        var confirm = await GetAsync(await MailedLinkAsync("confirm"));
        return await SubmitAndFollowAsync(confirm.Page, "form[action$='/confirm']");
    }

    /// <summary>The link of the newest letter that has one to a page.</summary>
    public async Task<string> MailedLinkAsync(string page)
    {
        await world.Parts.GetRequiredService<Ticker>().TickAsync(Stop);
        return LinkIn(world.Mail().Last(letter => letter.TextBody!.Contains($"/{page}?t=", StringComparison.Ordinal)), page);
    }

    public static string LinkIn(MimeMessage letter, string page) =>
        TokenLink()
            .Matches(letter.TextBody!)
            .Select(match => match.Value)
            .First(link => link.Contains($"/{page}?t=", StringComparison.Ordinal));

    public void Dispose() => http.Dispose();

    private static List<KeyValuePair<string, string>> FieldsOf(IHtmlFormElement form, (string Name, string Value)[] given)
    {
        var fields = new List<KeyValuePair<string, string>>();
        foreach (var element in form.Elements)
        {
            if (element is IHtmlInputElement { Type: "checkbox" or "radio" } box && !box.IsChecked) continue;
            var value = element switch
            {
                IHtmlInputElement input => input.Value,
                IHtmlSelectElement select => select.Value,
                IHtmlTextAreaElement area => area.Value,
                _ => null,
            };
            if (value is not null && element.GetAttribute("name") is { Length: > 0 } name) fields.Add(KeyValuePair.Create(name, value));
        }

        fields.RemoveAll(field => given.Any(pair => pair.Name == field.Key));
        return [.. fields, .. given.Select(pair => KeyValuePair.Create(pair.Name, pair.Value))];
    }

    private async Task<Visit> SendAsync(HttpRequestMessage request)
    {
        // No two requests come at the very same instant.
        world.Clock.AdvanceTo(world.Clock.GetCurrentInstant() + Duration.FromMilliseconds(1));
        if (From is not null) request.Headers.Add("X-Forwarded-For", From);
        var answer = await http.SendAsync(request, Stop);
        return new Visit(answer, await answer.Content.ReadAsStringAsync(Stop));
    }

    [GeneratedRegex(@"http\S*[?]t=[\w-]+")]
    private static partial Regex TokenLink();
}
