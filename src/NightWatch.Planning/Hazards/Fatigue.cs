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

    /// <summary>From the usual wake time on the day of the evening to an instant.</summary>
    public static double HoursAwake(Watch watch, LocalDate night, Instant at) =>
        (at - watch.Site.Zone.AtLeniently(night + watch.Outing.UsualWakeTime).ToInstant()).TotalHours;
}
