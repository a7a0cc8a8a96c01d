using System.CommandLine;
using System.Diagnostics;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.SimulatedYears;
using NightWatch.Weather.Fake;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.Simulations;

/// <summary>Was it right? Years of invented weather, in which the truth is known, through the service's own planner and policy.</summary>
internal static class VerifySimulatedCommand
{
    private const int DefaultYears = 2;
    private const int DefaultSites = 30;
    private const int DefaultEvery = 3;
    private const int DefaultSeed = 1;

    public static Command Create(Shell shell)
    {
        var years = Given.Whole("--years", $"How many years; default {DefaultYears}.", 1, 20);
        var sites = Given.Whole("--sites", $"How many sites; default {DefaultSites}.", 1, 500);
        var every = Given.Whole(
            "--every", $"Look at every so many-th night; 1 takes all and three times as long; default {DefaultEvery}.", 1, 30);
        var seed = Given.Whole("--seed", $"Another seed, other sites and weather; default {DefaultSeed}.", 0, int.MaxValue);
        var climate = Given.Climate();
        var members = Given.Whole(
            "--members",
            "Members of an ensemble beside the newest run; how far they scatter is an assumption; default 0, the runs before it alone.",
            0,
            50);
        var json = Given.Json();
        var command = new Command(
            "verify-simulated", "Scores calls and probabilities over years of invented weather, where the truth is known.")
        {
            years, sites, every, seed, climate, members, json,
        };
        command.SetAction(
            (given, stop) =>
            {
                var clock = Stopwatch.StartNew();
                var (span, places, step, world) = (
                    given.GetValue(years) ?? DefaultYears,
                    given.GetValue(sites) ?? DefaultSites,
                    given.GetValue(every) ?? DefaultEvery,
                    given.GetValue(seed) ?? DefaultSeed);
                var (kind, ensemble) = (given.KindOf(climate), given.GetValue(members) ?? 0);
                var progress = new Progress(shell.Error, places);
                var nights = new YearsSimulation(kind, world, YearsSimulation.NightsOf(span), places, step, ensemble, progress.Show).Run(
                    stop);
                progress.End();
                if (nights.Count == 0)
                    throw new BadInputException(
                        $"--sites: no place of seed {world} has a night that the sky allows; accepted: more sites or another seed.");
                var scores = YearsScores.Of(kind.Word(), world, span, places, step, ensemble, nights);
                if (given.GetValue(json)) Document.Write(shell.Output, scores);
                else
                    YearsTable.Draw(shell, scores, clock.Elapsed);
                return Task.FromResult(Exit.Ok);
            });
        return command;
    }

    /// <summary>One line that renews itself on a terminal, a line every ten sites elsewhere.</summary>
    private sealed class Progress(TextWriter error, int sites)
    {
        private readonly Lock turn = new();

        public void Show(int done)
        {
            var line = FormattableString.Invariant($"{done,3} of {sites} sites");
            lock (turn)
            {
                if (!Console.IsErrorRedirected) error.Write("\r" + line + "   ");
                else if (done % 10 == 0) error.WriteLine(line);
            }
        }

        public void End()
        {
            if (!Console.IsErrorRedirected) error.WriteLine();
        }
    }
}
