namespace NightWatch.Weather.Fake;

/// <summary>How a run errs: by its lead, alike in runs issued soon after each other; its members scatter about the run.</summary>
/// <remarks>
/// What is kept of the truth by lead is set so that the nights' mean cloud correlates with what came as Open-Meteo's forecasts for New York
/// did with its own first hours (.82 .74 .68 .62 at leads of 0 to 3 days, .42 at 5; 961 nights, 2023 to 2025). Until <see cref="SwitchH"/>
/// the feed answers from a short-range model, then from another, whose error is in part its own: the forecast jumps there, as such feeds
/// do. How far members scatter is an assumption, since no archive at hand holds any: <see cref="SpreadShare"/> of the run's own error, at
/// every lead. Given the run they know nothing of the truth.
/// </remarks>
/// <param name="LeadH">Hours from issue to valid time; 0 has no error.</param>
/// <param name="IssuedH">Hours of the Unix epoch.</param>
/// <param name="Member">0 for the run itself, 1 and up for members.</param>
internal readonly record struct ForecastError(double LeadH, double IssuedH, int Member)
{
    /// <summary>Lead at which the short-range model ends.</summary>
    public const double SwitchH = 18;

    /// <summary>Scatter of the members over the error of the run.</summary>
    public const double SpreadShare = 0.7;

    /// <summary>Lead by which the short-range model has its whole bias.</summary>
    private const double BiasGrowsH = 8;

    /// <summary>Bias of the short-range model over that of the other: in New York 11 points to 15.</summary>
    public const double ShortRangeBias = 0.72;

    /// <summary>Variance of the longer-range model's error that is its own.</summary>
    private const double OwnShare = 0.3;

    private const long MembersApart = 1_000_003;

    private static readonly double[] leadsH = [0, 13, SwitchH];
    private static readonly double[] keptShort = [1, 0.90, 0.885];
    private static readonly double[] longLeadsH = [SwitchH, 37, 61, 85, 109, 133, 240];
    private static readonly double[] keptLong = [0.87, 0.835, 0.785, 0.735, 0.64, 0.505, 0.2];

    /// <summary>Share of the whole bias.</summary>
    public double BiasShare => LeadH > SwitchH ? 1 : ShortRangeBias * Math.Min(1, LeadH / BiasGrowsH);

    /// <summary>Correlation with the truth of a standard normal that changes from day to day.</summary>
    public double Kept => LeadH > SwitchH ? Between(longLeadsH, keptLong, LeadH) : Between(leadsH, keptShort, LeadH);

    /// <summary>A standard normal that changes from day to day, as this view sees it.</summary>
    /// <param name="truth">Its true value.</param>
    /// <param name="noise">Its error's.</param>
    /// <param name="own">The longer-range model's own error's; null: it has none of its own.</param>
    /// <param name="place">Unit vector.</param>
    /// <param name="hours">Valid time.</param>
    public double Slow(double truth, NoiseField noise, NoiseField? own, (double X, double Y, double Z) place, double hours)
    {
        if (LeadH <= 0) return truth;
        var kept = Kept;
        var error = noise.AtIssue(place, hours, IssuedH);
        if (LeadH > SwitchH && own is not null)
            error = Math.Sqrt(1 - OwnShare) * error + Math.Sqrt(OwnShare) * own.AtIssue(place, hours, IssuedH);
        return Scattered(kept * truth + Lost(kept) * error, kept, noise, place, hours);
    }

    /// <summary>The same of one that changes within hours, of which less is kept.</summary>
    public double Fast(double truth, NoiseField noise, (double X, double Y, double Z) place, double hours)
    {
        if (LeadH <= 0) return truth;
        var kept = Kept * Kept;
        return Scattered(kept * truth + Lost(kept) * noise.AtIssue(place, hours, IssuedH), kept, noise, place, hours);
    }

    private double Scattered(double run, double kept, NoiseField noise, (double X, double Y, double Z) place, double hours)
    {
        if (Member == 0) return run;
        var scatter = SpreadShare * Lost(kept);
        return Lost(scatter) * run
            + scatter * noise.Draw(place, hours, unchecked((long)Chance.Mix((ulong)Member, (long)IssuedH + MembersApart)));
    }

    private static double Lost(double kept) => Math.Sqrt(1 - kept * kept);

    private static double Between(double[] leads, double[] values, double lead)
    {
        var i = 1;
        while (i < leads.Length - 1 && leads[i] < lead) i++;
        var share = Math.Clamp((lead - leads[i - 1]) / (leads[i] - leads[i - 1]), 0, 1);
        return values[i - 1] + share * (values[i] - values[i - 1]);
    }
}
