using System.CommandLine;
using System.Text.Json;
using NightWatch.Service.Terminal;
using NightWatch.Sky.Places;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.SkyNights;

/// <summary>What the sky does over one place in one night, or over a whole file of them.</summary>
internal static class SkyCommand
{
    public static Command Create(Shell shell)
    {
        var lat = Given.Latitude().Required();
        var lon = Given.Longitude().Required();
        var elevation = Given.Elevation();
        var zone = Given.Zone().Required();
        var night = Given.Date("--night", "Local date of the evening, YYYY-MM-DD.").Required();
        var subject = Given.Subject();
        var ra = Given.RightAscension();
        var dec = Given.Declination();
        var minAltitude = Given.MinAltitude();
        var horizon = Given.Horizon();
        var batch = Given.Text(
            "--batch",
            "File with one JSON object a line (lat, lon, elevation, zone, night, subject, ra, dec, minAltitude); - for standard input.");
        var json = Given.Json();
        var command = new Command("sky", "Sun, Moon, subject and dark windows of one night.")
        {
            lat,
            lon,
            elevation,
            zone,
            night,
            subject,
            ra,
            dec,
            minAltitude,
            horizon,
            batch,
            json,
        };
        command.SetAction(
            async (given, cancellationToken) =>
            {
                if (given.GetValue(batch) is { } file) return await RunBatchAsync(shell, file, cancellationToken);

                var request = new SkyRequest(
                    new GeoPosition(given.Needed(lat), given.Needed(lon), given.GetValue(elevation) ?? 0),
                    given.Needed(zone),
                    given.Needed(night),
                    SubjectNames.SubjectOf(given.GetValue(subject), given.GetValue(ra), given.GetValue(dec), "--"),
                    given.GetValue(minAltitude) ?? SkyRequest.DefaultMinAltitudeDeg,
                    shell.ReadHorizon(given.GetValue(horizon)));
                var sky = request.Compute();
                if (!given.GetValue(json))
                {
                    SkyTable.Draw(shell, request, sky);
                    return Exit.Ok;
                }

                await using (var writer = new Utf8JsonWriter(shell.Output, Document.Indented)) SkyJson.Write(writer, sky);
                shell.Output.WriteByte((byte)'\n');
                return Exit.Ok;
            });
        return command;
    }

    private static async Task<int> RunBatchAsync(Shell shell, string file, CancellationToken cancellationToken)
    {
        Stream input;
        try
        {
            input =
                file == "-"
                    ? Console.OpenStandardInput()
                    : new FileStream(
                        shell.PathOf(file),
                        FileMode.Open,
                        FileAccess.Read,
                        FileShare.Read,
                        1,
                        FileOptions.Asynchronous | FileOptions.SequentialScan);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BadInputException($"--batch: cannot read '{file}': {failure.Message}");
        }

        await using (input) return await SkyBatch.RunAsync(input, shell.Output, cancellationToken);
    }
}
