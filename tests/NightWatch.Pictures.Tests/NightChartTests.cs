using System.Buffers.Binary;
using System.Xml.Linq;
using NightWatch.Letters.Tests.Plans;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Pictures.Tests;

public sealed class NightChartTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    // Width and height: PNG specification (ISO/IEC 15948), 11.2.2, bytes 16 to 23 of the file.
    [Fact]
    public void The_png_has_two_device_pixels_a_logical_pixel()
    {
        var png = NightChart.Png(TestPlans.Of(VerdictClass.Go));
        Assert.Equal(2 * NightChart.WidthPx, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
        Assert.True(png.Length < 90_000, $"{png.Length} bytes");
    }

    [Fact]
    public void The_same_plan_gives_the_same_bytes() => Assert.Equal(NightChart.Png(TestPlans.Of(VerdictClass.Go)), NightChart.Png(TestPlans.Of(VerdictClass.Go)));

    [Theory]
    [InlineData(VerdictClass.Go, "Shoot 00:05–04:20 (4 h 15 min)")]
    [InlineData(VerdictClass.NoGo, "Best 00:05–04:20, not good enough")]
    public void The_window_stands_in_words_above_its_bracket(VerdictClass verdict, string words) => Assert.Contains(words, Words(TestPlans.Of(verdict)));

    [Fact]
    public void No_mark_of_altitude_stands_above_the_zenith()
    {
        var plan = TestPlans.Of(VerdictClass.Go);
        plan = plan with { Conditions = [.. plan.Conditions.Select(step => step with { Subject = step.Subject!.Value with { AltitudeDeg = 88 } })] };

        var words = Words(plan);

        Assert.Contains("90°", words);
        Assert.DoesNotContain("105°", words);
    }

    [Fact]
    public void A_night_without_a_run_says_so()
    {
        var plan = TestPlans.Of(VerdictClass.NoGo);
        Assert.Contains("No dark time with the subject up", Words(plan with { Verdict = plan.Verdict with { Run = null } }));
    }

    [Fact]
    public void Unknown_weather_is_called_unknown_and_not_drawn_as_zero()
    {
        var plan = TestPlans.Of(VerdictClass.Marginal, hasForecast: false);
        plan = plan with { Summary = plan.Summary with { CloudMean = null, CloudMost = null, DewOnset = null, LeastDewMarginK = null } };
        var words = Words(plan);
        Assert.Equal(3, words.Count(w => w == "unknown")); // cloud: its figures and its strip; dew: its strip
        Assert.Contains("dew unknown", words);
        Assert.DoesNotContain("Sky in frame", words);
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
        var kathmandu = TestPlans.CoreWatch with { Site = TestPlans.CoreWatch.Site with { Zone = DateTimeZoneProviders.Tzdb["Asia/Kathmandu"] } };
        Assert.Contains("02:00", Words(TestPlans.Of(VerdictClass.Go, watch: kathmandu)));
    }

    [Fact]
    public void The_accessible_name_says_the_message() => Assert.StartsWith(
        "Chart of the night Fri 4–Sat 5 Jun. Shooting window Sat 5 Jun 00:05 to 04:20 CEST. Cloud: Mostly clear: 8 %", Title(TestPlans.Of(VerdictClass.Go)), StringComparison.Ordinal);

    private static IEnumerable<NightPlan> OddNights()
    {
        var plan = TestPlans.Of(VerdictClass.Go);
        yield return plan;
        yield return plan with { Conditions = [] };
        yield return plan with { Conditions = [.. plan.Conditions.Take(2)] };
        yield return plan with { Verdict = plan.Verdict with { Run = new Interval(TestPlans.At(12), TestPlans.At(12, 0, 1)) } };
        yield return plan with { Verdict = plan.Verdict with { Run = new Interval(TestPlans.At(21, 34), TestPlans.At(21, 40)) } };
        yield return plan with { Conditions = [.. plan.Conditions.Select((c, i) => c with { At = TestPlans.At(12) + i * Duration.FromMinutes(13) })] };
        yield return plan with { Conditions = [.. plan.Conditions.Select((c, i) => c with { Cloud = i % 7 == 0 ? null : 1.2, LensDewMarginK = -30, SkyShare = 4, Moon = c.Moon with { AltitudeDeg = 89 } })] };
        yield return plan with { Watch = plan.Watch with { Letters = new LetterSettings { Units = UnitSystem.Imperial }, Subject = new NightWatch.Sky.Subjects.Subject.Stars() } };
        var springForward = new LocalDate(2027, 3, 27);
        yield return TestPlans.Of(VerdictClass.Marginal, night: springForward);
    }

    private static IEnumerable<Spot> Spots(Shape shape) => shape switch
    {
        Shape.Area a => a.Outline,
        Shape.Line l => l.Path,
        Shape.Words w => [w.At],
        _ => [],
    };

    private static List<string> Words(NightPlan plan) => [.. XDocument.Parse(NightChart.Svg(plan)).Descendants(Svg + "text").Select(t => t.Value)];

    private static string Title(NightPlan plan) => XDocument.Parse(NightChart.Svg(plan)).Descendants(Svg + "title").Single().Value;
}
