using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace NightWatch.Weather.Fake;

/// <summary>
/// A climate as text. Lines of <c>#</c> say where it comes from; <c>name value</c> gives a figure; <c>table month block values...</c> gives
/// a row of a <see cref="StationTable"/> in hundredths of the sky, tenths of a kelvin, tenths of a metre a second.
/// </summary>
internal static class ClimateText
{
    private const double CloudUnit = 0.01;
    private const double OtherUnit = 0.1;

    private static readonly ImmutableArray<(string Name, Func<Climate, StationTable> Of, double Unit)> tables =
    [
        ("cloud", climate => climate.Cloud, CloudUnit),
        ("depression", climate => climate.DepressionK, OtherUnit),
        ("wind", climate => climate.WindMps, OtherUnit),
    ];

    private static readonly ImmutableArray<(string Name, Func<Climate, double> Of)> figures =
    [
        ("nightsAtMost20", climate => climate.Nights.AtMost20),
        ("nightsAtMost45", climate => climate.Nights.AtMost45),
        ("nightToNight", climate => climate.Nights.NightToNight),
        ("medianLeastDepressionK", climate => climate.Nights.MedianLeastDepressionK),
        ("nightsWithin2K", climate => climate.Nights.Within2K),
        ("slowShare", climate => climate.SlowShare),
        ("slowH", climate => climate.SlowH),
        ("moistureH", climate => climate.MoistureH),
        ("cloudMoisture", climate => climate.CloudMoisture),
        ("bias", climate => climate.Bias),
    ];

    /// <summary>That of a kind, which comes with the program.</summary>
    public static Climate ReadShipped(ClimateKind kind)
    {
        using var stream = typeof(ClimateText).Assembly.GetManifestResourceStream($"climate.{kind.Word()}.txt")!;
        using var reader = new StreamReader(stream);
        return Read(reader.ReadToEnd());
    }

    /// <summary>Reads a climate.</summary>
    /// <exception cref="FormatException">It is no such text.</exception>
    public static Climate Read(string text)
    {
        var lines = text.Split('\n').Where(line => line.Length > 0 && line[0] != '#').Select(line => line.Split(' ')).ToList();
        return new Climate
        {
            Cloud = Table(0),
            DepressionK = Table(1),
            WindMps = Table(2),
            Nights = new StationFigures(Figure(0), Figure(1), Figure(2), Figure(3), Figure(4)),
            SlowShare = Figure(5),
            SlowH = Figure(6),
            MoistureH = Figure(7),
            CloudMoisture = Figure(8),
            Bias = Figure(9),
        };

        double Figure(int index) =>
            Number(
                lines.FirstOrDefault(line => line[0] == figures[index].Name)?[1]
                    ?? throw new FormatException($"The climate has no {figures[index].Name}."));

        StationTable Table(int index)
        {
            var rows = lines.Where(line => line[0] == tables[index].Name).ToList();
            if (rows.Count != StationTable.Months * StationTable.Blocks || rows.Any(row => row.Length != 3 + StationTable.Levels))
                throw new FormatException($"The climate's table {tables[index].Name} has not one full row a month and block.");
            return new StationTable([.. rows.SelectMany(row => row.Skip(3)).Select(value => tables[index].Unit * Number(value))]);
        }
    }

    /// <summary>Writes a climate.</summary>
    /// <param name="climate">The climate to write.</param>
    /// <param name="remarks">Where it comes from, a line each.</param>
    public static string Write(Climate climate, IEnumerable<string> remarks)
    {
        var text = new StringBuilder();
        foreach (var remark in remarks) text.Append(CultureInfo.InvariantCulture, $"# {remark}\n");
        foreach (var (name, of) in figures) text.Append(CultureInfo.InvariantCulture, $"{name} {of(climate):0.###}\n");
        foreach (var (name, of, unit) in tables)
        {
            for (var row = 0; row < StationTable.Months * StationTable.Blocks; row++)
            {
                var (month, block) = (row / StationTable.Blocks, row % StationTable.Blocks);
                text.Append(CultureInfo.InvariantCulture, $"{name} {month + 1} {block + 1}");
                for (var level = 0; level < StationTable.Levels; level++)
                {
                    var score = StationTable.FirstScore + StationTable.ScoreStep * level;
                    var value = of(climate).At(month + 0.5, (block + 0.5) * 24 / StationTable.Blocks, score) / unit;
                    text.Append(CultureInfo.InvariantCulture, $" {value:0}");
                }

                text.Append('\n');
            }
        }

        return text.ToString();
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
