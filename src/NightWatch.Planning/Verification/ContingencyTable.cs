namespace NightWatch.Planning.Verification;

/// <summary>Calls against what came. All counts are nights.</summary>
/// <remarks>
/// Scores as defined by the WWRP/WGNE Joint Working Group on Forecast Verification Research. Each is null where its denominator is 0:
/// a share of nothing is unknown, not 0.
/// </remarks>
/// <param name="Hits">Said on, was usable.</param>
/// <param name="FalseAlarms">Said on, was not: a drive for nothing.</param>
/// <param name="Misses">Said off, was usable: a night lost.</param>
/// <param name="CorrectRejections">Said off, was not.</param>
public readonly record struct ContingencyTable(int Hits, int FalseAlarms, int Misses, int CorrectRejections)
{
    /// <summary>All nights.</summary>
    public int Count => Hits + FalseAlarms + Misses + CorrectRejections;

    /// <summary>Nights that were called on.</summary>
    public int SaidOn => Hits + FalseAlarms;

    /// <summary>Nights that were usable.</summary>
    public int Usable => Hits + Misses;

    /// <summary>Hits of the usable nights.</summary>
    public double? HitRate => Share(Hits, Usable);

    /// <summary>False alarms of the calls: drives for nothing among the drives.</summary>
    public double? FalseAlarmRatio => Share(FalseAlarms, SaidOn);

    /// <summary>False alarms of the unusable nights.</summary>
    public double? FalseAlarmRate => Share(FalseAlarms, FalseAlarms + CorrectRejections);

    /// <summary>Right calls of all.</summary>
    public double? ProportionCorrect => Share(Hits + CorrectRejections, Count);

    /// <summary>Calls by usable nights: above 1 says on too often.</summary>
    public double? Bias => Share(SaidOn, Usable);

    /// <summary>Hits of all nights that were called on or usable (critical success index).</summary>
    public double? ThreatScore => Share(Hits, Hits + FalseAlarms + Misses);

    /// <summary>Hit rate less false alarm rate: 0 for every caller without knowledge (Peirce 1884).</summary>
    public double? PeirceSkill => HitRate - FalseAlarmRate;

    /// <summary>Right calls beyond those of chance (Heidke 1926).</summary>
    public double? HeidkeSkill => Share(
        2 * ((double)Hits * CorrectRejections - (double)FalseAlarms * Misses),
        (double)(Hits + Misses) * (Misses + CorrectRejections) + (double)(Hits + FalseAlarms) * (FalseAlarms + CorrectRejections));

    /// <summary>The table with one more night.</summary>
    public ContingencyTable With(bool saidOn, bool came) => (saidOn, came) switch
    {
        (true, true) => this with { Hits = Hits + 1 },
        (true, false) => this with { FalseAlarms = FalseAlarms + 1 },
        (false, true) => this with { Misses = Misses + 1 },
        _ => this with { CorrectRejections = CorrectRejections + 1 },
    };

    /// <summary>Of many calls.</summary>
    public static ContingencyTable Of(IEnumerable<(bool SaidOn, bool Came)> calls) =>
        calls.Aggregate(default(ContingencyTable), (table, call) => table.With(call.SaidOn, call.Came));

    private static double? Share(double part, double whole) => whole == 0 ? null : part / whole;
}
