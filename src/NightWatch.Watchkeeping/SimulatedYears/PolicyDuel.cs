namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>The letters against one naive rule on the same nights.</summary>
/// <param name="Naive">The rule.</param>
/// <param name="FewerDrivesForNothing">The letters cost fewer drives for nothing.</param>
/// <param name="FewerNightsLost">The letters lose fewer usable nights.</param>
/// <param name="Text">Who won what, and why where the letters did not.</param>
internal sealed record PolicyDuel(PolicyScores Naive, bool FewerDrivesForNothing, bool FewerNightsLost, string Text)
{
    public static PolicyDuel Of(PolicyScores letters, PolicyScores naive)
    {
        var (drives, lost) = (letters.Calls.FalseAlarms < naive.Calls.FalseAlarms, letters.Calls.Misses < naive.Calls.Misses);
        var figures = FormattableString.Invariant(
            $"{letters.DrivesForNothingAYear:0.0} drives for nothing a site and year against {naive.DrivesForNothingAYear:0.0}, {letters.NightsLostAYear:0.0} usable nights lost against {naive.NightsLostAYear:0.0}");
        return new PolicyDuel(naive, drives, lost, (drives, lost) switch
        {
            (true, true) => $"Better than \"{naive.Name}\" on both counts: {figures}.",
            (true, false) => $"Not better than \"{naive.Name}\" in nights lost: {figures}. {WhyLost(naive)}",
            (false, true) => $"Not better than \"{naive.Name}\" in drives for nothing: {figures}. {WhyDriven(naive)}",
            _ => $"Not better than \"{naive.Name}\" on either count: {figures}.",
        });
    }

    private static string WhyLost(PolicyScores naive) => naive.Calls.Misses == 0
        ? FormattableString.Invariant($"Who goes every time loses none; it costs {naive.DrivesAYear:0} drives a year.")
        : FormattableString.Invariant($"It drives {naive.DrivesAYear:0} times a year and finds more of the usable nights by going more often.");

    private static string WhyDriven(PolicyScores naive) =>
        FormattableString.Invariant($"It drives only {naive.DrivesAYear:0} times a year, and who stays at home drives for nothing the least.");
}
