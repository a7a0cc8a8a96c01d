using System.Buffers.Binary;
using System.Xml.Linq;
using NightWatch.Letters.Tests.Plans;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Pictures.Tests;

public sealed class NightChartTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>Clear in the run of the night's morning.</summary>
    private const long ClearWorld = 0;

    /// <summary>A front stands over the site in it.</summary>
    private const long CloudyWorld = 171;

    private static readonly LocalDate SpringForward = new(2027, 3, 27);

    private static readonly NightPlan Go = PlanOf(ClearWorld);

    private static NightPlan PlanOf(long world) => new InventedWeather(world).Plan(Ines.CoreWatch, Ines.Night, Ines.At(7));

    // Width and height: PNG specification (ISO/IEC 15948), 11.2.2, bytes 16 to 23 of the file.
    [Fact]
    public void The_png_has_two_device_pixels_a_logical_pixel()
    {
        var png = NightChart.Png(Go);
        Assert.Equal(2 * NightChart.WidthPx, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
        Assert.True(png.Length < 90_000, $"{png.Length} bytes");
    }

    [Fact]
    public void The_same_plan_gives_the_same_bytes() => Assert.Equal(NightChart.Png(Go), NightChart.Png(Go));

    [Theory]
    [InlineData(ClearWorld, VerdictClass.Go, "Shoot 00:07–04:33 (4 h 26 min)")]
    [InlineData(CloudyWorld, VerdictClass.NoGo, "Best 00:07–04:33, not good enough")]
    public void The_window_stands_in_words_above_its_bracket(long world, VerdictClass verdict, string words)
    {
        var plan = PlanOf(world);
        Assert.Equal(verdict, plan.Verdict.Class);
        Assert.Contains(words, Words(plan));
    }

    [Fact]
    public void No_mark_of_altitude_stands_above_the_zenith()
    {
        var plan = Go;
        plan = plan with
        {
            Conditions = [.. plan.Conditions.Select(step => step with { Subject = step.Subject!.Value with { AltitudeDeg = 88 } })],
        };

        var words = Words(plan);

        Assert.Contains("90°", words);
        Assert.DoesNotContain("105°", words);
    }

    [Fact]
    public void A_night_without_a_run_says_so()
    {
        // In December the core is up by day.
        var plan = new InventedWeather(ClearWorld).Plan(Ines.CoreWatch, new LocalDate(2027, 12, 18), Ines.At(7));
        Assert.Contains("No dark time with the subject up", Words(plan));
    }

    [Fact]
    public void Unknown_weather_is_called_unknown_and_not_drawn_as_zero()
    {
        var words = Words(NightPlanner.Plan(new NightInputs { Watch = Ines.CoreWatch, Night = Ines.Night, Now = Ines.At(7) }));
        Assert.Equal(3, words.Count(w => w == "unknown")); // cloud: its figures and its strip; dew: its strip
        Assert.Contains("dew unknown", words);
    }

    [Fact]
    public void Every_shape_stays_inside_the_picture_whatever_the_night()
    {
        foreach (var plan in OddNights())
        {
            var scene = NightChart.SceneOf(plan);
            foreach (var spot in scene.Shapes.SelectMany(Spots))
            {
                Assert.InRange(spot.X, 0, scene.Width);
                Assert.InRange(spot.Y, 0, scene.Height);
            }

            Assert.NotEmpty(NightChart.Png(plan));
            Assert.Equal(Svg + "svg", XDocument.Parse(NightChart.Svg(plan)).Root!.Name);
        }
    }

    [Fact]
    public void Hours_are_whole_on_the_local_clock_also_where_the_zone_is_off_by_quarters()
    {
        var site = Ines.CoreWatch.Site with
        {
            Id = "ridge",
            Position = new GeoPosition(28.2, 84.5, 2100),
            Zone = DateTimeZoneProviders.Tzdb["Asia/Kathmandu"],
        };
        Assert.Contains("02:00", Words(new InventedWeather(ClearWorld).Plan(Ines.CoreWatch with { Site = site }, Ines.Night, Ines.At(7))));
    }

    [Fact]
    public void The_accessible_name_says_the_message() =>
        Assert.StartsWith(
            "Chart of the night Fri 4–Sat 5 Jun. Shooting window Sat 5 Jun 00:07 to 04:33 CEST. Cloud: Mostly clear: 5 %",
            Title(Go),
            StringComparison.Ordinal);

    private static IEnumerable<NightPlan> OddNights()
    {
        var plan = Go;
        yield return plan;
        yield return plan with
        {
            Conditions = [],
        };
        yield return plan with
        {
            Conditions = [.. plan.Conditions.Take(2)],
        };
        yield return plan with
        {
            Verdict = plan.Verdict with { Run = new Interval(Ines.At(12), Ines.At(12, 0, 1)) },
        };
        yield return plan with
        {
            Verdict = plan.Verdict with { Run = new Interval(Ines.At(21, 34), Ines.At(21, 40)) },
        };
        yield return plan with
        {
            Conditions = [.. plan.Conditions.Select((c, i) => c with { At = Ines.At(12) + i * Duration.FromMinutes(13) })],
        };
        yield return plan with
        {
            Conditions =
            [
                .. plan.Conditions.Select(
                    (c, i) =>
                        c with
                        {
                            Cloud = i % 7 == 0 ? null : 1.2,
                            LensDewMarginK = -30,
                            SkyShare = 4,
                            Moon = c.Moon with { AltitudeDeg = 89 },
                        }),
            ],
        };
        yield return plan with
        {
            Watch = plan.Watch with
            {
                Letters = new LetterSettings { Units = UnitSystem.Imperial },
                Subject = new NightWatch.Sky.Subjects.Subject.Stars(),
            },
        };
        yield return new InventedWeather(ClearWorld).Plan(Ines.CoreWatch, SpringForward, Ines.Local(SpringForward, 7, 0, Ines.Madrid));
    }

    private static IEnumerable<Spot> Spots(Shape shape) => shape switch
    {
        Shape.Area a => a.Outline,
        Shape.Line l => l.Path,
        Shape.Words w => [w.At],
        _ => [],
    };

    private static List<string> Words(NightPlan plan) =>
        [.. XDocument.Parse(NightChart.Svg(plan)).Descendants(Svg + "text").Select(t => t.Value)];

    private static string Title(NightPlan plan) => XDocument.Parse(NightChart.Svg(plan)).Descendants(Svg + "title").Single().Value;
}
