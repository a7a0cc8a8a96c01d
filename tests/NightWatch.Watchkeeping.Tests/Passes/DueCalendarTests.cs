using CsCheck;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Store.Due;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Weather.Known;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Passes;

public sealed class DueCalendarTests
{
    private static readonly string[] Zones = [.. DateTimeZoneProviders.Tzdb.Ids];

    // The clock changes are those of the IANA time zone database.
    [Fact]
    public void Every_date_brings_each_look_exactly_once_in_every_zone() =>
        Gen.Select(Gen.Int[0, Zones.Length - 1], Gen.Int[0, 20 * 365], Gen.Int[0, 23], Gen.Int[0, 59]).Sample((index, day, hour, minute) =>
        {
            var watch = WatchIn(Zones[index], new LocalTime(hour, minute));
            var now = Instant.FromUtc(2015, 1, 1, 0, 0) + Duration.FromDays(day);

            var items = DueCalendar.Daily(watch, now, Duration.FromDays(4)).ToList();

            Assert.Equal(items.Count, items.Select(item => item.Key).Distinct().Count());
            Assert.All(items, item => Assert.True(item.NotAfter > item.DueAt));
            var evenings = items.Where(item => item.Key.Pass == PassKind.Evening).OrderBy(item => item.Key.Night).ToList();
            Assert.InRange(evenings.Count, 4, 6);
            Assert.All(evenings.Zip(evenings.Skip(1)), pair => Assert.True(pair.First.DueAt < pair.Second.DueAt));
        });

    [Fact]
    public void Planning_again_later_gives_the_same_items()
    {
        var watch = WatchIn("Africa/Windhoek", new LocalTime(19, 0));
        var now = Instant.FromUtc(2027, 6, 1, 12, 0);

        var first = DueCalendar.Daily(watch, now, Duration.FromHours(36)).ToDictionary(item => item.Key);
        var later = DueCalendar.Daily(watch, now + Duration.FromHours(6), Duration.FromHours(36));

        Assert.All(later.Where(item => first.ContainsKey(item.Key)), item => Assert.Equal(first[item.Key], item));
    }

    [Fact]
    public void A_look_missed_less_than_its_use_ago_is_still_planned_and_an_older_one_is_not()
    {
        var watch = WatchIn("Africa/Windhoek", new LocalTime(19, 0)); // UTC+2

        var items = DueCalendar.Daily(watch, Instant.FromUtc(2027, 6, 1, 20, 0), Duration.FromHours(1)).ToList();

        Assert.Equal((PassKind.Evening, new LocalDate(2027, 6, 1)), (Assert.Single(items).Key.Pass, items[0].Key.Night));
    }

    [Fact]
    public void A_digest_is_due_on_its_weekday_alone_and_only_for_who_asked()
    {
        var watch = WatchIn("Africa/Windhoek", new LocalTime(19, 0));
        var now = Instant.FromUtc(2027, 6, 1, 0, 0);
        IEnumerable<LocalDate> Digests(Watch of) =>
            DueCalendar
                .Daily(of, now, Duration.FromDays(21))
                .Where(item => item.Key.Pass == PassKind.Digest)
                .Select(item => item.Key.Night);

        Assert.Empty(Digests(watch));
        // Thursdays of June 2027.
        Assert.Equal(
            [new(2027, 6, 3), new(2027, 6, 10), new(2027, 6, 17)],
            Digests(watch with { Letters = watch.Letters with { Digest = IsoDayOfWeek.Thursday } }));
    }

    [Fact]
    public void Looks_come_minutes_after_the_full_hour_apart_from_one_degree_to_the_next_and_together_for_one_subscriber()
    {
        var late = Enumerable.Range(0, 100).Select(i => Late(new GeoPosition(40 + i % 10, 5 + i / 10))).ToList();

        Assert.All(late, minutes => Assert.InRange(minutes, Duration.FromMinutes(1), Duration.FromMinutes(9)));
        Assert.True(late.Distinct().Count() > 80, $"{late.Distinct().Count()} different of 100");
        Assert.Equal(Late(new GeoPosition(40.2, 5.1)), Late(new GeoPosition(60, 5), home: new GeoPosition(40.2, 5.1)));
        Assert.InRange(Late(new GeoPosition(40.9, 5.9)) - Late(new GeoPosition(40.1, 5.1)), Duration.Epsilon, Duration.FromSeconds(1));

        static Duration Late(GeoPosition site, GeoPosition? home = null)
        {
            var watch = WatchIn("UTC", new LocalTime(19, 0));
            return DueCalendar
                    .Daily(
                        watch with
                        {
                            Site = watch.Site with { Position = site },
                        },
                        Instant.FromUtc(2027, 6, 1, 0, 0),
                        Duration.FromHours(20),
                        home)
                    .Single(item => item.Key.Pass == PassKind.Evening && item.Key.Night.Day == 1)
                    .DueAt - Instant.FromUtc(2027, 6, 1, 19, 0);
        }
    }

    [Fact]
    public void A_paused_watch_is_due_for_nothing() =>
        Assert.Empty(
            DueCalendar.Daily(
                WatchIn("UTC", new LocalTime(19, 0)) with
                {
                    Paused = true,
                },
                Instant.FromUtc(2027, 6, 1, 0, 0),
                Duration.FromDays(2)));

    [Fact]
    public void The_last_word_is_due_at_the_leave_by_that_was_told_even_when_the_night_has_none_left()
    {
        var now = Instant.FromUtc(2027, 6, 1, 12, 0);
        var watch = WatchIn("Africa/Windhoek", new LocalTime(19, 0));
        var plan = NightEvaluation
            .Of(watch, new LocalDate(2027, 6, 1), PlaceWeather.Unknown, ChanceBook.Shipped, now, new SharedSky())
            .Plan with
        {
            LeaveBy = null,
        };
        var told = new ToldNight
        {
            WatchId = watch.Id,
            Night = plan.Night,
            Told = VerdictClass.Go,
            LeaveBy = now + Duration.FromHours(3),
        };

        Assert.Equal(told.LeaveBy, LastWord(told, plan)?.DueAt);
        Assert.Equal(told.LeaveBy, LastWord(told, plan with { LeaveBy = now + Duration.FromHours(5) })?.DueAt);
        Assert.Equal(
            now + Duration.FromHours(5),
            LastWord(told with { LeaveBy = null }, plan with { LeaveBy = now + Duration.FromHours(5) })?.DueAt);
        Assert.Null(LastWord(told with { LeaveBy = null }, plan));
        // The table keeps milliseconds; kept, the look must not come a fraction of one before leave-by.
        var odd = told.LeaveBy + Duration.FromTicks(551_823);
        Assert.True(Instant.FromUnixTimeMilliseconds(LastWord(told with { LeaveBy = odd }, plan)!.DueAt.ToUnixTimeMilliseconds()) >= odd);
        Assert.Null(LastWord(told with { Closed = true }, plan));

        DueItem? LastWord(ToldNight memory, NightPlan of) =>
            DueCalendar.OfTold(memory, of, now).SingleOrDefault(item => item.Key.Pass == PassKind.LeaveBy);
    }

    private static Watch WatchIn(string zone, LocalTime evening) => new()
    {
        Id = "w",
        Subscriber = new Subscriber("", "a@example.org"),
        Site = new Site { Id = "s", Name = "S", Position = new GeoPosition(0, 0), Zone = DateTimeZoneProviders.Tzdb[zone] },
        Letters = new LetterSettings { EveningAt = evening },
    };
}
