using NightWatch.Planning.Nights;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NodaTime;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Nights;

public sealed class AlternativesTests
{
    private static readonly Watch Here = new DesertNight().Watch;

    private static readonly Instant Morning = new DesertNight().Now;

    [Fact]
    public void The_greater_promise_comes_first_then_the_nearer_site_and_a_no_go_is_left_out()
    {
        var far = Elsewhere("dune-mouth", -24.6, 16.9, 0.05);
        var near = Elsewhere("salt-pan", -24.6, 16.3, 0.05);
        var cloudy = Elsewhere("old-well", -24.6, 16.0, 0.30);
        var overcast = Elsewhere("thorn-gate", -24.6, 15.95, 1);

        var ranked = Alternatives.Rank(Here, [cloudy, overcast, far, near], Morning);

        Assert.Equal(["salt-pan", "dune-mouth", "old-well"], ranked.Select(alternative => alternative.Plan.Watch.Site.Id));
        Assert.True(Alternatives.Promise(near) > Alternatives.Promise(cloudy));
    }

    [Fact]
    public void Sites_beyond_the_driving_range_are_left_out()
    {
        var beyond = Elsewhere("river-bend", -24.6, 18.0, 0.05); // 212 km as the crow flies

        Assert.Empty(Alternatives.Rank(Here, [beyond], Morning));
        Assert.Single(Alternatives.Rank(Here with { Outing = new Outing { MostDriveKm = 300 } }, [beyond], Morning));
    }

    [Fact]
    public void A_later_night_here_needs_no_drive_and_a_free_evening()
    {
        var plan = new DesertNight().Plan(); // a Tuesday
        var busy = plan with { Watch = plan.Watch with { Outing = new Outing { FreeEvenings = [IsoDayOfWeek.Friday] } } };

        Assert.Null(Assert.Single(Alternatives.Rank(Here, [plan], Morning)).DriveKm);
        Assert.Empty(Alternatives.Rank(Here, [busy], Morning));
    }

    [Fact]
    public void The_drive_starts_at_home_where_home_is_known()
    {
        var atHome = Here with { Outing = new Outing { HomeLatitudeDeg = -24.6, HomeLongitudeDeg = 16.3 } };

        Assert.Equal(0, Assert.Single(Alternatives.Rank(atHome, [Elsewhere("salt-pan", -24.6, 16.3, 0.05)], Morning)).DriveKm!.Value, 6);
    }

    [Fact]
    public void A_night_to_be_left_for_already_is_left_out()
    {
        var near = Elsewhere("salt-pan", -24.6, 16.3, 0.05);
        var leaveBy = near.LeaveBy!.Value;

        Assert.Single(Alternatives.Rank(Here, [near], leaveBy - Duration.FromSeconds(1)));
        Assert.Empty(Alternatives.Rank(Here, [near], leaveBy));
        Assert.Empty(Alternatives.Rank(Here, [near], leaveBy + Duration.FromHours(8)));
    }

    private static NightPlan Elsewhere(string id, double latitude, double longitude, double cloud)
    {
        var watch = Here with { Site = Here.Site with { Id = id, Name = id, Position = new GeoPosition(latitude, longitude) } };
        return new DesertNight
        {
            Watch = watch,
            Weather = new()
            {
                Cloud = All(cloud),
                RainProbability = All(cloud),
                Gust = All(cloud < 1 ? 3 : 16),
            },
        }.Plan();
    }
}
