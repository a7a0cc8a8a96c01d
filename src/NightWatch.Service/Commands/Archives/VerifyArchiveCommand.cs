using System.CommandLine;
using System.Diagnostics;
using NightWatch.Planning.Road;
using NightWatch.Planning.Watches;
using NightWatch.Service.Commands.Keeping;
using NightWatch.Service.Terminal;
using NightWatch.Sky.Places;
using NightWatch.Watchkeeping.Archives;
using NightWatch.Weather.Archives;
using NightWatch.Words;
using NightWatch.Words.Documents;
using NodaTime;

namespace NightWatch.Service.Commands.Archives;

/// <summary>Was it right on real forecasts?
/// Every night of an archive looked at as the service would have, and held against what came.</summary>
internal static class VerifyArchiveCommand
{
    /// <summary>Coarse global grids have cells of this size.</summary>
    private const double MostKmApart = 50;

    private static readonly LocalTime DefaultLook = new(15, 0);

    public static Command Create(Shell shell)
    {
        var runs = Given.Text("--runs", "An archive of forecasts with their times of issue, JSON lines, gzip or plain.", "file").Required();
        var outcome = Given.Text("--outcome", "An archive of the hours that came at the same place.", "file").Required();
        var watch = Given.Text("--watch",
            "A watch file; default: stars under a measured 21.9 mag/arcsec2, a level horizon, ample kit, every evening free.");
        var look = Given.Time("--look", "Local time of the looks, HH:MM; default 15:00.");
        var prior = Given.Word(
            "--prior",
            "Where the chances begin: shipped, the program's own (default); none, even chances; blocks, refitted on the archive without " +
            "the two months around each night, for an archive that the program's own was fitted on.",
            "shipped",
            "none",
            "blocks");
        var learn = Given.Word("--learn", "Whether each night teaches the looks after it: on, or off (default).", "on", "off");
        var json = Given.Json();
        var command = new Command("verify-archive",
            "Scores calls, chances and letters over an archive of real forecasts and the hours that came.")
        {
            runs, outcome, watch, look, prior, learn, json,
        };
        command.SetAction((given, stop) =>
        {
            var clock = Stopwatch.StartNew();
            var (runsFile, outcomeFile) = (given.Needed(runs), given.Needed(outcome));
            var came = Read(shell, "--outcome", outcomeFile, ForecastArchive.ReadOutcome);
            var known = Read(shell, "--runs", runsFile, bytes => ForecastArchive.ReadRuns(bytes, ArchiveTrial.LongestAhead));
            RefuseOtherPlace(known.Header, came.Header);
            var order = given.GetValue(watch) is { } file ? WatchCommand.ReadFile(shell, file, "--watch") : DefaultWatch(known.Header);
            if (Km(PositionOf(known.Header), order.Site.Position) is > MostKmApart and var km)
            {
                shell.Error.WriteLine(FormattableString.Invariant(
                    $"nightwatch: warning: --runs is for {known.Header.Place}, {km:0} km from {order.Site.Name}."));
            }

            var (archived, at) = (new ArchivedForecastRuns(known.Runs), given.GetValue(look) ?? DefaultLook);
            var choice = Enum.Parse<PriorChoice>(given.GetValue(prior) ?? "shipped", ignoreCase: true);
            var isLearning = given.GetValue(learn) == "on";
            var usual = given.GetValue(watch) is null ? order : DefaultWatch(known.Header);
            var chances = ArchiveChances.Of(choice, isLearning, order, usual, archived, came.Hours, at, stop)
                ?? throw new BadInputException(
                    "--prior: blocks leaves nothing to fit on, the archive is too short; accepted: shipped, none.");
            var nights = new ArchiveTrial(order, archived, came.Hours, at, chances).Run(stop);
            if (nights.Count == 0)
                throw new BadInputException("--outcome: no hour of it tells of cloud; accepted: an archive with cloudPercent.");
            var scores = ArchiveScores.Of(nights);
            if (given.GetValue(json))
            {
                foreach (var remark in ArchiveRemarks.Of(nights, Speech.ToAnybody.Language)) shell.Error.WriteLine($"nightwatch: {remark}");
                Document.Write(shell.Output, ArchiveDocument.Of(nights, scores));
            }
            else
            {
                ArchiveTables.Draw(shell, known.Header, nights, scores, clock.Elapsed, choice, isLearning);
            }

            return Task.FromResult(Exit.Ok);
        });
        return command;
    }

    private static T Read<T>(Shell shell, string option, string path, Func<byte[], T> read)
    {
        try
        {
            return read(shell.ReadFile(path, option));
        }
        catch (ArchiveFormatException broken)
        {
            throw new BadInputException($"{option}: '{path}' {broken.Message}");
        }
    }

    private static void RefuseOtherPlace(ArchiveHeader runs, ArchiveHeader outcome)
    {
        if (Km(PositionOf(runs), PositionOf(outcome)) is > MostKmApart and var km)
        {
            throw new BadInputException(FormattableString.Invariant(
                $"--outcome: it is for {outcome.Place}, {km:0} km from {runs.Place} of --runs; accepted: at most {MostKmApart:0} km."));
        }
    }

    private static Watch DefaultWatch(ArchiveHeader header)
    {
        try
        {
            return ArchiveWatch.Of(header.Place, PositionOf(header), Given.ZoneOf(header.Zone));
        }
        catch (BadInputException unknown)
        {
            throw new BadInputException($"--runs: line 1, zone: {unknown.Message}.");
        }
    }

    private static GeoPosition PositionOf(ArchiveHeader header) => new(header.LatitudeDeg, header.LongitudeDeg, header.ElevationM);

    private static double Km(GeoPosition a, GeoPosition b) => RoadDistance.GreatCircleKm(a, b);
}
