using BenchmarkDotNet.Running;
using NightWatch.Bench.Climates;
using NightWatch.Bench.Forecasts;
using NightWatch.Bench.Load;
using NightWatch.Bench.Planning;
using NightWatch.Bench.Priors;
using NightWatch.Bench.Replays;
using NightWatch.Bench.Sky;

// plan: one core's time for the plan of a watch-night whose sky events are known;
// sky: a million site-nights and their accuracy; sky-core: one core's time per site-night; places: for other programs to
// compare with; replay make: a database to try nightwatch replay on; parts: BenchmarkDotNet on the pieces. forecasts: stored answers read
// and every watch's nights evaluated from them; prior: makes the prior of the chance from an archive; climates: makes those of the invented
// weather from typical years; stored: bytes of a stored forecast and the time of reading one, now and before.
return args switch
{
    ["sky", .. var rest] => MillionNights.Run(rest),
    ["sky-core", ..] => MillionNights.RunOneCore(),
    ["plan", .. var rest] => PlanNights.Run(rest),
    ["prior", .. var rest] => PriorCommand.Run(rest),
    ["climates", .. var rest] => ClimateCommand.Run(rest),
    ["places"] => Places.Run(Console.In, Console.Out),
    ["parts", .. var rest] => Parts(rest),
    ["stored", .. var rest] => StoredForecasts.Run(rest),
    ["forecasts", .. var rest] => TenThousandWatches.Run(rest),
    ["replay", "make", .. var rest] => await YearOfSites.MakeAsync(rest),
    ["load", .. var rest] => await LoadCommand.RunAsync(rest),
    _ => Usage(),
};

static int Parts(string[] args)
{
    BenchmarkSwitcher.FromAssembly(typeof(SkyParts).Assembly).Run(args.Length == 0 ? ["--filter", "*"] : args);
    return 0;
}

static int Usage()
{
    Console.Error.WriteLine(
        "usage: dotnet run -c Release --project tests/NightWatch.Bench -- plan [WATCH-NIGHTS] | sky [SITE-NIGHTS [NIGHTS]] | sky-core | " +
        "prior rows|fit|trials | climates FOLDER-OF-EPW-FILES FOLDER | places | parts [BenchmarkDotNet options] | forecasts [WATCHES " +
        "[NIGHTS [EARLIER-RUNS [MEMBERS]]]] | stored [FEED BODY]... | replay make DATABASE [SITES [DAYS [none|fake]]] | load make " +
        "DATABASE [WATCHES [SITES [RUNS [MEMBERS]]]] | load pass DATABASE | load plan DATABASE | load share DATABASE | load letters " +
        "DATABASE SMTP-PORT | load letter");
    return 2;
}
