using System.Globalization;

namespace NightWatch.EndToEnd.Killing;

/// <summary>
/// Many kills of the real program, counted against the mail server's own ledger. NW_KILLS sets how many (the short form is for every build,
/// a thousand for a release), NW_SEED which; NW_FIGURES names a file for the account, NW_PROGRAM a published program.
/// </summary>
public sealed class KillStormTests
{
    private static int Seed =>
        int.TryParse(Environment.GetEnvironmentVariable("NW_SEED"), CultureInfo.InvariantCulture, out var seed) ? seed : 20270306;

    private static int? Asked =>
        int.TryParse(Environment.GetEnvironmentVariable("NW_KILLS"), CultureInfo.InvariantCulture, out var kills) ? kills : null;

    [Fact]
    public async Task On_SQLite_no_letter_is_lost_and_every_second_copy_was_unavoidable()
    {
        await using var bench = new KillBench();
        await HoldsAsync("SQLite, one process", await new KillStorm(bench, Seed, processes: 1).RunAsync(Asked ?? 5));
    }

    [Fact]
    public async Task On_PostgreSQL_with_two_processes_no_letter_is_lost_and_every_second_copy_was_unavoidable()
    {
        await using var bench = new KillBench(await PostgresDatabase.CreateAsync());
        await HoldsAsync("PostgreSQL, two processes", await new KillStorm(bench, Seed, processes: 2).RunAsync(Asked ?? 3));
    }

    private static async Task HoldsAsync(string what, StormAccount account)
    {
        await Figures.WriteAsync($"{what}, seed {Seed}: {account}");
        Assert.Equal((0, 0), (account.Lost, account.Strange));
        Assert.Empty(account.Unexcused);
    }
}
