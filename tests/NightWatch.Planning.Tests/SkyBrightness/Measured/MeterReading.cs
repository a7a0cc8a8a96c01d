using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Planning.Tests.SkyBrightness.Measured;

/// <summary>One reading of a sky meter that looks at the zenith.</summary>
/// <param name="At">When.</param>
/// <param name="Mag">Brightness of the sky, mag/arcsec².</param>
internal readonly record struct MeterReading(Instant At, double Mag)
{
    private const string OnSchedule = "1";

    /// <summary>The readings on schedule of a file beside this one; <c>Nights/README.md</c> gives its format and licence.</summary>
    public static IReadOnlyList<MeterReading> Night(string name) =>
        [
            .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "SkyBrightness", "Measured", "Nights", $"{name}_AK06E436.dat"))
                .Where(line => !line.StartsWith('#'))
                .Select(line => line.Split(';'))
                .Where(fields => fields[5] == OnSchedule)
                .Select(fields => new MeterReading(
                    LocalDateTimePattern.ExtendedIso.Parse(fields[0]).Value.InUtc().ToInstant(),
                    double.Parse(fields[4], CultureInfo.InvariantCulture))),
        ];
}
