using System.Globalization;
using System.Text.Json;
using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Views;
using NightWatch.Pages.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Service.Commands.Plans;
using NightWatch.Service.Rehearsal;

namespace NightWatch.Pages.Tests.Nights;

/// <summary>What the page's script reads out is the plan document's, figure by figure.</summary>
[Collection("afternoon")]
public sealed class NightGridTests(Afternoon world)
{
    [Fact]
    public async Task Every_figure_of_every_step_is_the_plan_document_s_own_text()
    {
        var found = await FoundAsync();
        var conditions = PlanDocument.Of(found.Plan, []).AsObject()["conditions"]!.AsArray();
        var grid = await EmbeddedAsync("night-grid");

        Assert.Equal(conditions[0]!["at"]!.GetValue<string>(), grid.GetProperty("start").GetString());
        Assert.Equal(300, grid.GetProperty("stepS").GetDouble());
        Assert.Equal(conditions.Count, grid.GetProperty("clock").GetArrayLength());
        var compared = 0;
        foreach (var reading in grid.GetProperty("readings").EnumerateArray())
        {
            var path = reading.GetProperty("path").GetString()!.Split('.');
            for (var step = 0; step < conditions.Count; step++)
            {
                var planned = path.Aggregate(conditions[step], (node, name) => node?[name])?.ToJsonString();
                var shown = reading.GetProperty("values") is { ValueKind: JsonValueKind.Array } values
                    ? values[step] is { ValueKind: not JsonValueKind.Null } figure
                        ? figure.GetRawText()
                        : null
                    : null;
                Assert.True(planned == shown, $"{string.Join('.', path)} at step {step}: {planned} in the document, {shown} on the page");
                compared++;
            }
        }

        Assert.True(compared > 3000, $"{compared} figures compared");
    }

    [Fact]
    public async Task Every_quantity_of_a_condition_is_on_the_page()
    {
        var found = await FoundAsync();
        var condition = PlanDocument.Of(found.Plan, [])["conditions"]![0]!.AsObject();
        string[] figures = [.. condition.Where(member => member.Key != "at").Select(member => member.Key)];

        Assert.Equal(figures.Order(), NightReadings.Of(found.Plan).Select(reading => reading.Path.Split('.')[0]).Distinct().Order());
    }

    [Fact]
    public async Task The_subject_s_places_are_the_plan_document_s_path()
    {
        var found = await FoundAsync();
        var path = PlanDocument.Of(found.Plan, [])["framing"]!["path"]!.AsArray();
        var marks = await EmbeddedAsync("frame-path");

        Assert.Equal(path.Count, marks.GetArrayLength());
        for (var i = 0; i < path.Count; i++)
        {
            Assert.Equal(path[i]!["at"]!.GetValue<string>(), marks[i].GetProperty("at").GetString());
            Assert.Equal(path[i]!["shot"]!.GetValue<int>(), marks[i].GetProperty("shot").GetInt32());
            var across = Math.Abs(100 * path[i]!["across"]!.GetValue<double>()).ToString("0", CultureInfo.InvariantCulture);
            Assert.Contains($"subject {across} %", marks[i].GetProperty("says").GetString(), StringComparison.Ordinal);
        }
    }

    private Task<FoundNight> FoundAsync() =>
        world.Parts.GetRequiredService<NightHandler>().FindAsync(Watch, Cast.FirstDay.PlusDays(1), TestContext.Current.CancellationToken);

    private static Watch Watch => Cast.Watches[0];

    private async Task<JsonElement> EmbeddedAsync(string id)
    {
        using var http = new HttpClient();
        var page = new HtmlParser().ParseDocument(
            await http.GetStringAsync(world.World.Links.Night(Watch, Cast.FirstDay.PlusDays(1)), TestContext.Current.CancellationToken));
        return JsonDocument.Parse(page.GetElementById(id)!.TextContent).RootElement;
    }
}
