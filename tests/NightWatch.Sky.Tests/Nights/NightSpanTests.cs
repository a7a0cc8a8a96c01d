using NightWatch.Sky.Nights;
using NodaTime;
using NodaTime.TimeZones;

namespace NightWatch.Sky.Tests.Nights;

public sealed class NightSpanTests
{
    private static readonly IDateTimeZoneProvider Zones = DateTimeZoneProviders.Tzdb;

    // The night on which the clocks change (IANA time zone database)
    [Theory]
    [InlineData("Europe/Berlin", 2026, 3, 28, 23)]
    [InlineData("Europe/Berlin", 2026, 10, 24, 25)]
    [InlineData("Australia/Hobart", 2026, 4, 4, 25)]
    [InlineData("Australia/Hobart", 2026, 10, 3, 23)]
    [InlineData("Australia/Lord_Howe", 2026, 4, 4, 24.5)]
    [InlineData("Africa/Windhoek", 2026, 8, 12, 24)]
    // Samoa crossed the date line and left out 2011-12-30; Kwajalein crossed it the other way and lived 1969-09-30 twice
    [InlineData("Pacific/Apia", 2011, 12, 29, 12)]
    [InlineData("Pacific/Apia", 2011, 12, 30, 12)]
    [InlineData("Pacific/Kwajalein", 1969, 9, 30, 26)]
    // War-time double summer time
    [InlineData("Europe/London", 1941, 5, 3, 23)]
    public void A_night_runs_from_local_noon_to_local_noon(string zone, int year, int month, int day, double hours) =>
        Assert.Equal(hours, NightSpan.Of(Zones[zone], new(year, month, day)).Duration.TotalHours);

    [Fact]
    public void Noon_is_what_the_zone_says_in_every_zone_near_every_change()
    {
        var resolver = Resolvers.CreateMappingResolver(Resolvers.ReturnEarlier, Resolvers.ReturnStartOfIntervalAfter);
        foreach (var zone in Zones.Ids.Select(id => Zones[id]))
        {
            var from = Instant.FromUtc(1940, 1, 1, 0, 0);
            foreach (
                var rule in zone.GetZoneIntervals(from, Instant.FromUtc(2040, 1, 1, 0, 0)).Where(rule => rule.HasStart && rule.Start > from)
            )
            {
                for (var day = -3; day <= 3; day++)
                {
                    var date = rule.Start.InUtc().Date.PlusDays(day);
                    Assert.Equal(zone.ResolveLocal(date.At(LocalTime.Noon), resolver).ToInstant(), NightSpan.Noon(zone, date));
                }
            }
        }
    }
}
