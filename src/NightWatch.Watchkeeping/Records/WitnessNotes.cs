using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Weather.Observations;

namespace NightWatch.Watchkeeping.Records;

/// <summary>What is kept beside an outcome: who saw it, and where it is not told, why not.</summary>
internal static class WitnessNotes
{
    public static string OfRuns(string feedId, SeenHours seen, NightOutcome came) =>
        $"By later runs of {feedId} over the hours of the night; no observation, and kind to that feed.{Why(seen, came)}";

    public static string OfReports(NearReports near, SeenHours seen, NightOutcome was)
    {
        var by = seen.IsAutomatic ? ", of an instrument that sees no high cloud" : "";
        return FormattableString.Invariant($"By reports of {near.Station}, {near.Km:0} km away{by}.{Why(seen, was)}");
    }

    private static string Why(SeenHours seen, NightOutcome was)
    {
        if (was != NightOutcome.NotTold) return "";
        string[] reasons =
        [
            .. seen.Blind > 0 ? [$"the high cloud of {Hours(seen.Blind)} was out of sight"] : Array.Empty<string>(),
            .. seen.Missing > 0 ? [$"{Hours(seen.Missing)} went without a word"] : Array.Empty<string>(),
        ];
        return $" Not told: {string.Join(", and ", reasons)}, and the night hangs on it.";
    }

    private static string Hours(int count) => count == 1 ? "1 hour" : FormattableString.Invariant($"{count} hours");
}
