using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Terminal;

namespace NightWatch.Service.Commands.Replays;

/// <summary>"cloud.stop=0.4": limits in place of a watch's own, named as in the watch file, checked as the file is.</summary>
internal sealed class LimitOverrides
{
    private const string Accepted = "accepted: a limit of the watch file and its value, such as cloud.stop=0.4 or usableRunMin=120";

    private readonly IReadOnlyList<(string[] Path, JsonNode Value)> overrides;

    private LimitOverrides(IReadOnlyList<(string[] Path, JsonNode Value)> overrides) => this.overrides = overrides;

    /// <summary>There are some.</summary>
    public bool Any => overrides.Count > 0;

    /// <exception cref="BadInputException">One cannot be read.</exception>
    public static LimitOverrides Read(IEnumerable<string> given) => new([.. given.Select(Read)]);

    /// <summary>The watch with them.</summary>
    /// <exception cref="BadInputException">A limit is unknown or out of range; the line names it.</exception>
    public Watch Apply(Watch watch)
    {
        if (!Any) return watch;
        var document = JsonSerializer.SerializeToNode(watch, WatchJson.Options)!.AsObject();
        foreach (var (path, value) in overrides)
        {
            var at = document["limits"]!.AsObject();
            for (var i = 0; i < path.Length - 1; i++)
                at = at[path[i]] as JsonObject ?? throw Unknown(path);
            if (!at.ContainsKey(path[^1])) throw Unknown(path);
            at[path[^1]] = value.DeepClone();
        }

        return KeptFiles.ValueOf(WatchFile.Read(document.ToJsonString(), $"--set for {watch.Id}")) with { Paused = watch.Paused };
    }

    private static (string[] Path, JsonNode Value) Read(string text)
    {
        var parts = text.Split('=', 2, StringSplitOptions.TrimEntries);
        if (parts.Length != 2 || parts[0].Length == 0) throw new BadInputException($"--set: '{text}' is no limit; {Accepted}.");
        var path = parts[0].Split('.');
        if (path[0] == "limits") path = path[1..];
        if (path.Length == 0 || Array.Exists(path, step => step.Length == 0))
            throw new BadInputException($"--set: '{text}' is no limit; {Accepted}.");
        return (path, Value(parts[1]) ?? throw new BadInputException($"--set: '{text}' has no number, true or false; {Accepted}."));
    }

    private static JsonValue? Value(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? JsonValue.Create(number)
        : bool.TryParse(text, out var flag) ? JsonValue.Create(flag)
        : null;

    private static BadInputException Unknown(string[] path) => new($"--set: there is no limit '{string.Join('.', path)}'; {Accepted}.");
}
