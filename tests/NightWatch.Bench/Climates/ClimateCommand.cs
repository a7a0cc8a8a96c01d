using System.Globalization;
using System.IO.Compression;
using NightWatch.Weather.Fake;

namespace NightWatch.Bench.Climates;

/// <summary>
/// Makes the climates of the invented weather from typical years: <c>climates IN OUT</c>, folders of EPW files (gzip) and of the program's
/// texts.
/// </summary>
internal static class ClimateCommand
{
    private static readonly (ClimateKind Kind, string File, double Bias)[] stations =
    [
        (ClimateKind.DryDesert, "USA_AZ_Davis-Monthan.AFB.722745_TMY3.epw.gz", -0.10),
        (ClimateKind.SemiAridHighPlain, "USA_CO_Aurora-Buckley.Field.ANGB.724695_TMY3.epw.gz", 0),
        (ClimateKind.HumidContinental, "USA_IL_Chicago-OHare.Intl.AP.725300_TMY3.epw.gz", 0.15),
        (ClimateKind.MarineCoast, "USA_WA_Port.Angeles-William.R.Fairchild.Intl.AP.727885_TMY3.epw.gz", 0),
    ];

    public static int Run(string[] args)
    {
        if (args is not [var from, var to])
        {
            Console.Error.WriteLine("usage: climates FOLDER-OF-EPW-FILES FOLDER");
            return 2;
        }

        foreach (var (kind, file, bias) in stations)
        {
            using var reader = new StreamReader(new GZipStream(File.OpenRead(Path.Combine(from, file)), CompressionMode.Decompress));
            var year = TypicalYear.Read(reader.ReadToEnd().Split('\n').Select(line => line.TrimEnd('\r')).ToList());
            var climate = ClimateFit.Of(year, bias);
            File.WriteAllText(
                Path.Combine(to, kind.Word() + ".txt"),
                ClimateText.Write(
                    climate,
                    [
                        $"Made by tests/NightWatch.Bench, climates, from {file}: NREL TMY3, public domain.",
                        $"Station {year.Station}, " +
                        $"{FormattableString.Invariant($"{year.LatitudeDeg:0.00} N {-year.LongitudeDeg:0.00} W")}. Nights are 20 to 04 h " +
                        "of local standard time.",
                        "The figures from slowShare to moistureH are fitted to them; bias is set, see Climate.",
                        "Tables: name, month, three hours of the Sun, values at standard normal scores -2 to 2 by quarters;",
                        "cloud in hundredths, depression in tenths of a kelvin, wind in tenths of m/s.",
                    ]));
            Console.WriteLine(kind);
            Console.WriteLine("  station  " + climate.Nights);
            Console.WriteLine("  invented " + ClimateFit.Made(year, climate));
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  slow {climate.SlowShare:0.00} {climate.SlowH:0} h, moisture {climate.MoistureH:0} h, with cloud " +
                    $"{climate.CloudMoisture:0.00}"));
        }

        return 0;
    }
}
