using NightWatch.Watchkeeping.Archives;
using NightWatch.Words;

namespace NightWatch.Service.Commands.Archives;

/// <summary>What is left out of the scores of an archive, or taken on trust, each in one sentence.</summary>
internal static class ArchiveRemarks
{
    public static IEnumerable<string> Of(IReadOnlyList<ArchivedNight> nights, ILanguage language)
    {
        (ArchiveRemark Remark, int Count)[] remarks =
        [
            (ArchiveRemark.SkyAlone, nights.Count(night => night.Use == NightUse.NotTheWeathers)),
            (ArchiveRemark.CloudUnknown, nights.Count(night => night.Use == NightUse.CloudUnknown)),
            (ArchiveRemark.NoRun, nights.Sum(night => night.Looks.Count(look => night.Use == NightUse.Scored && !look.HasForecast))),
            (ArchiveRemark.RainUnknown, nights.Count(night => night.RainUnknown)),
            (ArchiveRemark.WindUnknown, nights.Count(night => night.GustUnknown)),
        ];
        return remarks.Where(one => one.Count > 0).Select(one => language.Of(one.Remark, one.Count));
    }
}
