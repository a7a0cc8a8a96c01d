using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Hazards;

/// <summary>Hours awake at the wheel.</summary>
/// <remarks>
/// Williamson and Feyer 2000, Occupational and Environmental Medicine 57, 649: after 17 to 19 hours awake performance equalled or was
/// worse than that at 0.05 % blood alcohol.
/// </remarks>
internal static class Fatigue
{
    public const double CautionHours = 17;

    /// <summary>For one line; the caution says it all.</summary>
    public const string InShort = "After 17 h people react as with 0.05 % alcohol in the blood: sleep there before driving.";

    public const string Advice =
        "After 17 to 19 hours awake people react as with 0.05 % alcohol in the blood, over the limit in many countries (check yours). Sleep before the night, and sleep there before driving.";

    /// <summary>From the usual wake time on the day of the evening to an instant.</summary>
    public static double HoursAwake(Watch watch, LocalDate night, Instant at) =>
        (at - watch.Site.Zone.AtLeniently(night + watch.Outing.UsualWakeTime).ToInstant()).TotalHours;
}
