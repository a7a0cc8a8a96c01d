using System.Text.Json;
using NightWatch.EndToEnd.Programs;

namespace NightWatch.EndToEnd;

public sealed class WatchCommandTests
{
    [Fact]
    public async Task The_example_can_be_added_listed_shown_paused_and_removed()
    {
        using var program = new Nightwatch();
        program.Write("watch.json", (await program.RunAsync("watch", "example")).Output);

        Assert.Equal(0, (await program.RunAsync("watch", "add", "watch.json")).Exit);
        Assert.Equal(
            "ilse-salt-pan",
            JsonDocument.Parse((await program.RunAsync("watch", "list", "--json")).Output).RootElement[0].GetProperty("id").GetString());
        Assert.Equal(
            "salt-pan",
            JsonDocument.Parse((await program.RunAsync("site", "list", "--json")).Output).RootElement[0].GetProperty("id").GetString());
        Assert.Equal(0, (await program.RunAsync("watch", "pause", "ilse-salt-pan")).Exit);
        var shown = await program.RunAsync("watch", "show", "ilse-salt-pan");
        Assert.True(JsonDocument.Parse(shown.Output).RootElement.GetProperty("paused").GetBoolean());

        // What is shown is a watch file again.
        program.Write("again.json", shown.Output);
        Assert.Equal(0, (await program.RunAsync("watch", "add", "again.json")).Exit);
        Assert.Contains("a watch stands on", (await program.RunAsync("site", "remove", "salt-pan")).Line, StringComparison.Ordinal);
        Assert.Equal(0, (await program.RunAsync("watch", "remove", "ilse-salt-pan")).Exit);
        Assert.Equal(0, (await program.RunAsync("site", "remove", "salt-pan")).Exit);
        Assert.Empty(JsonDocument.Parse((await program.RunAsync("watch", "list", "--json")).Output).RootElement.EnumerateArray());
    }
}
