namespace NightWatch.Weather.Fake;

/// <summary>Who looks at the weather: nobody but nature (the truth), or a run issued at an hour, perhaps one of its members.</summary>
/// <param name="IssuedH">Hours of the Unix epoch; null for the truth.</param>
/// <param name="Member">0 for the run itself, 1 and up for members.</param>
internal readonly record struct ForecastView(double? IssuedH, int Member)
{
    /// <summary>What is so.</summary>
    public static ForecastView Truth => default;

    /// <summary>The error of this view at a valid time.</summary>
    public ForecastError ErrorAt(double hours) => new(IssuedH is { } issued ? Math.Max(0, hours - issued) : 0, IssuedH ?? 0, Member);
}

/// <summary>How a run errs: by its lead, alike in runs issued soon after each other, and in part by member.</summary>
/// <param name="LeadH">Hours from issue to valid time; 0 has no error.</param>
/// <param name="IssuedH">Hours of the Unix epoch.</param>
/// <param name="Member">0 for the run itself.</param>
internal readonly record struct ForecastError(double LeadH, double IssuedH, int Member)
{
    private const double SharedByMembers = 0.6;
    private const double FarApart = 40_000;

    /// <summary>A standard normal draw of this error.</summary>
    public double Draw(GaussianField noise, (double X, double Y, double Z) place, double hours)
    {
        var shared = noise.At(place, hours, IssuedH);
        return Member == 0
            ? shared
            : SharedByMembers * shared + Math.Sqrt(1 - SharedByMembers * SharedByMembers) * noise.At(place, hours, IssuedH + FarApart * Member);
    }

    /// <summary>A true standard normal value as this view sees it: less and less of the truth, more and more of an error of its own.</summary>
    public double Blur(double truth, GaussianField noise, (double X, double Y, double Z) place, double hours, double memoryH)
    {
        if (LeadH <= 0)
            return truth;
        var kept = Math.Exp(-LeadH / memoryH);
        return kept * truth + Math.Sqrt(1 - kept * kept) * Draw(noise, place, hours);
    }
}
