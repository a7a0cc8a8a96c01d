using System.Globalization;

namespace NightWatch.Bench.Load;

/// <summary>
/// "make" fills a database, "pass" runs the evening pass over it in a process of its own, so that its memory is its own; "letters" sends
/// what it queued. "plan" and "share" are the two halves of "pass", for several processes.
/// </summary>
internal static class LoadCommand
{
    public static Task<int> RunAsync(string[] args)
    {
        switch (args)
        {
            case ["make", var setting, .. var rest]:
                var numbers = rest.Select(arg => int.Parse(arg, CultureInfo.InvariantCulture))
                    .Concat(new[] { 100_000, 20_000, 4, 0 }.Skip(rest.Length))
                    .ToArray();
                return LoadDatabase.MakeAsync(setting, numbers[0], numbers[1], numbers[2], numbers[3]);
            case ["letters", var setting, var port]:
                return LoadLetters.RunAsync(setting, port);
            case ["letter"]:
                return LetterCost.RunAsync();
            case ["pass", var setting]:
                return LoadPass.RunAsync(setting);
            case ["plan", var setting]:
                return LoadPass.PlanAsync(setting);
            case ["share", var setting]:
                return LoadPass.ShareAsync(setting);
            default:
                Console.Error.WriteLine(
                    "usage: load make DATABASE [WATCHES [SITES [RUNS [MEMBERS]]]] | load pass DATABASE | load plan DATABASE | load share " +
                    "DATABASE | load letters DATABASE SMTP-PORT | load letter");
                return Task.FromResult(2);
        }
    }
}
