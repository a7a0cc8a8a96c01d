using System.Globalization;
using System.IO.Compression;
using NightWatch.Planning.Chance;
using NightWatch.Watchkeeping.Archives;
using NodaTime.Text;

namespace NightWatch.Bench.Priors;

/// <summary>What looks said and what came, as CSV in gzip: provenance, a line of names, then a look and question a line.</summary>
internal static class SampleText
{
    private const string Columns =
        "night,lead,own,newestShare,newestWorth,newestStretch,runsShare,runsWorth,runsStretch," +
        "room,gust,rain,usable,meanCloud,bestCloud,cloudSpread";

    /// <summary>Writes looks. Figures keep two decimals, cloud three.</summary>
    /// <param name="file">Where to.</param>
    /// <param name="comments">Provenance and licence, a line each.</param>
    /// <param name="looks">In any order.</param>
    public static void Write(string file, IEnumerable<string> comments, IEnumerable<SampledLook> looks)
    {
        using var writer = new StreamWriter(new GZipStream(File.Create(file), CompressionLevel.SmallestSize)) { NewLine = "\n" };
        foreach (var comment in comments) writer.WriteLine("# " + comment);
        writer.WriteLine(Columns);
        foreach (var look in looks) writer.WriteLine(LineOf(look));
    }

    /// <summary>Reads looks.</summary>
    public static IReadOnlyList<SampledLook> Read(string file)
    {
        using var reader = new StreamReader(new GZipStream(File.OpenRead(file), CompressionMode.Decompress));
        string[] lines = [.. reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(line => line[0] != '#')];
        return lines[0] == Columns
            ? [.. lines.Skip(1).Select(LookOf)]
            : throw new FormatException($"{file}: the columns are {lines[0]}; accepted: {Columns}.");
    }

    private static string LineOf(SampledLook look)
    {
        var (figures, cloud) = (look.Figures, look.Cloud);
        return string.Join(
            ',',
            [
                LocalDatePattern.Iso.Format(look.Night), look.Lead.ToString(CultureInfo.InvariantCulture), look.IsWatchs ? "1" : "",
                .. Of(figures.Newest), .. Of(figures.Runs), Number(figures.Room), Number(figures.Gust), Number(figures.Rain),
                look.Usable ? "1" : "", Number(cloud?.Mean, 3), Number(cloud?.BestMean, 3), Number(cloud?.Spread, 3),
            ]);

        static string[] Of(ForecastShape? shape) => [Number(shape?.Share), Number(shape?.Worth), Number(shape?.Stretch)];
    }

    private static SampledLook LookOf(string line)
    {
        var cells = line.Split(',');
        var mean = At(13);
        return new SampledLook(
            LocalDatePattern.Iso.Parse(cells[0]).Value,
            int.Parse(cells[1], CultureInfo.InvariantCulture),
            cells[2].Length > 0,
            new ChanceFigures(Shape(3)!.Value, Shape(6), At(9)!.Value, At(10)!.Value, At(11)),
            cells[12].Length > 0,
            mean is null ? null : new DarkCloud(mean.Value, At(14)!.Value, At(15)!.Value));

        double? At(int column) => cells[column].Length == 0 ? null : double.Parse(cells[column], CultureInfo.InvariantCulture);

        ForecastShape? Shape(int column) =>
            At(column) is { } share ? new ForecastShape(share, At(column + 1)!.Value, At(column + 2)!.Value) : null;
    }

    private static string Number(double? value, int decimals = 2) =>
        value is { } known ? Math.Round(known, decimals).ToString("0.###", CultureInfo.InvariantCulture) : "";
}
