using NightWatch.Service.Settings;

namespace NightWatch.Service.Tests.Settings;

public sealed class ZoneFileTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-zones-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void The_library_s_own_data_as_a_file_are_sound() => Assert.Null(ZoneFile.Fault(ZoneData.Write(folder)));

    [Fact]
    public void What_is_not_zone_data_is_refused_in_one_sentence_and_never_used()
    {
        var file = Path.Combine(folder, "no.nzd");
        File.WriteAllText(file, "Africa/Windhoek is two hours ahead, mostly");

        Assert.Contains("accepted: an .nzd file", ZoneFile.Fault(file), StringComparison.Ordinal);
        Assert.Contains("cannot be read", ZoneFile.Fault(Path.Combine(folder, "none.nzd")), StringComparison.Ordinal);
        ZoneFile.Use(file);
    }
}
