using NightWatch.Watchkeeping.Archives;

namespace NightWatch.Service.Commands.Archives;

/// <summary>What is left out of the scores of an archive, or taken on trust, each in one sentence.</summary>
internal static class ArchiveRemarks
{
    public static IEnumerable<string> Of(IReadOnlyList<ArchivedNight> nights)
    {
        if (Count(night => night.Use == NightUse.NotTheWeathers) is > 0 and var sky)
            yield return $"{Nights(sky)} listed and not scored: the sky or the kit alone decides.";
        if (Count(night => night.Use == NightUse.CloudUnknown) is > 0 and var cloud)
            yield return $"{Nights(cloud)} listed and not scored: the cloud that came is not known for every hour of the dark.";
        if (nights.Sum(night => night.Looks.Count(look => night.Use == NightUse.Scored && !look.HasForecast)) is > 0 and var looks)
            yield return $"{looks} look{(looks == 1 ? "" : "s")} not scored: the archive holds no run of the day before.";
        if (Count(night => night.RainUnknown) is > 0 and var rain)
            yield return $"{Nights(rain)} scored although rain of the dark hours is not known: it takes nothing from them.";
        if (Count(night => night.GustUnknown) is > 0 and var gusts)
            yield return $"{Nights(gusts)} scored although wind of the dark hours is not known: it takes nothing from them.";

        int Count(Func<ArchivedNight, bool> which) => nights.Count(which);
    }

    private static string Nights(int count) => count == 1 ? "1 night" : $"{count} nights";
}
