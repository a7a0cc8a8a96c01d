using System.Reflection;
using NightWatch.Planning.Camera;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Power;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Words.Tests;

// Wording of our own; no outside source. The figures are made up.
public sealed class FieldWordsTests
{
    private static readonly Instant Evening = Instant.FromUtc(2027, 3, 6, 21, 0);

    private static readonly Speech Metric = new(English.Instance, UnitSystem.Metric, DateTimeZone.Utc);

    private static readonly Speech Imperial = new(English.Instance, UnitSystem.Imperial, DateTimeZone.Utc);

    /// <summary>English with a clock of twelve hours, as another language may have.</summary>
    private static readonly Speech TwelveHours = new(
        DispatchProxy.Create<ILanguage, WithTwelveHours>(), UnitSystem.Metric, DateTimeZone.Utc);

    private static readonly LensPlan Wet = new()
    {
        Onset = Evening + Duration.FromHours(3),
        IsFrost = false,
        LeastMarginK = -1.5,
        HeaterNeededW = 1.6,
        HeaterOn = Evening + Duration.FromHours(2),
        KitHeaterW = 3,
        HeatedLeastMarginK = 1,
        HeatedOnset = null,
        HeaterNeedWh = 10.3,
        HeaterSuffices = true,
    };

    public static TheoryData<double[], double?, string> Supplies => new()
    {
        { [14.4], null, "taking 10.3 Wh; the camera's pack suffices." },
        { [14.4, 14.4], null, "taking 10.3 Wh; the camera's packs suffice." },
        { [14.4, 14.4], 40, "taking 10.3 Wh of the 30 Wh its battery gives; its battery suffices." },
    };

    [Theory]
    [MemberData(nameof(Supplies))]
    public void A_heater_is_said_to_live_on_what_it_hangs_on(double[] packsWh, double? batteryWh, string ends)
    {
        var kit = new Kit { BatteriesWh = packsWh, DewHeaterW = 3, DewHeaterBatteryWh = batteryWh };
        var lens = Wet with { HeaterBatteryGivesWh = batteryWh is null ? null : 30 };

        Assert.Equal(
            $"Without a heater dew from 00:00; 1.6 W from 23:00 hold it clear; the kit's 3 W keep it clear, {ends}",
            English.Instance.Lens(lens, kit, Metric));
    }

    [Theory]
    [InlineData(1, "the camera's pack is empty at 02:00.")]
    [InlineData(2, "the camera's packs are empty at 02:00.")]
    public void A_heater_ends_with_the_cameras_packs(int packs, string ends)
    {
        var kit = new Kit { BatteriesWh = [.. Enumerable.Repeat(14.4, packs)], DewHeaterW = 3 };
        var lens = Wet with { HeaterSuffices = false, HeaterEmpty = Evening + Duration.FromHours(5) };

        Assert.EndsWith(ends, English.Instance.Lens(lens, kit, Metric), StringComparison.Ordinal);
    }

    [Fact]
    public void A_dry_lens_is_told_in_the_readers_degrees()
    {
        var dry = Wet with { Onset = null, LeastMarginK = 2.5, HeaterOn = null };

        Assert.Equal("Without a heater 2.5 °C above its dew point: no heater needed.", English.Instance.Lens(dry, new Kit(), Metric));
        Assert.Equal("Without a heater 4.5 °F above its dew point: no heater needed.", English.Instance.Lens(dry, new Kit(), Imperial));
    }

    [Fact]
    public void Packs_are_counted_and_the_cold_is_told_in_the_readers_degrees()
    {
        var power = PowerOf(-5);

        Assert.Matches(@"^\d+ Wh needed, the pack gives \d+ Wh at −5 °C$", English.Instance.Batteries(power, 1, Metric));
        Assert.Matches(@"^\d+ Wh needed, the packs give \d+ Wh at −5 °C$", English.Instance.Batteries(power, 2, Metric));
        Assert.Matches(@"^\d+ Wh needed, the packs give \d+ Wh at 23 °F$", English.Instance.Batteries(power, 2, Imperial));
    }

    [Fact]
    public void Packs_are_changed_by_the_readers_clock()
    {
        var power = PowerOf(4) with
        {
            Swaps = [Evening + Duration.FromHours(2), Evening + Duration.FromHours(4)],
            Empty = Evening + Duration.FromHours(6),
        };
        const string twelve = "; change at 11:00 PM, 1:00 AM; empty at 3:00 AM: take another";
        const string twentyFour = "; change at 23:00, 01:00; empty at 03:00: take another";

        Assert.EndsWith(twentyFour, English.Instance.Batteries(power, 2, Metric), StringComparison.Ordinal);
        Assert.EndsWith(twelve, TwelveHours.Language.Batteries(power, 2, TwelveHours), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "the cards are full after 1 frame, at 21:00")]
    [InlineData(870, "the cards are full after 870 frames, at 21:00")]
    public void Frames_on_the_cards_are_counted(int shots, string said) =>
        Assert.Equal(said, English.Instance.CardChange(new StoragePlan(60, 30, shots, Evening), Metric));

    [Fact]
    public void Cards_that_never_fill_are_not_spoken_of() =>
        Assert.Null(English.Instance.CardChange(new StoragePlan(10, 30, 870, null), Metric));

    [Fact]
    public void The_clock_of_the_language_stands_in_every_sentence_with_a_time()
    {
        var kit = new Kit { DewHeaterW = 3, DewHeaterBatteryWh = 40 };
        var language = TwelveHours.Language;
        var run = new Interval(Evening, Evening + Duration.FromHours(4.5));

        Assert.StartsWith(
            "Without a heater dew from 12:00 AM; 1.6 W from 11:00 PM", language.Lens(Wet, kit, TwelveHours), StringComparison.Ordinal);
        Assert.Equal("Sat 6 Mar 9:00 PM to Sun 7 Mar 1:30 AM UTC, 4 h 30 min", language.Window(run, TwelveHours));
        Assert.Equal("GO: Salt shelf, shoot 9:00 PM–1:30 AM", language.EntryTitle(VerdictClass.Go, "Salt shelf", run, TwelveHours));
        Assert.Equal(
            "issued Sat 6 Mar 9:00 PM UTC, fetched Sat 6 Mar 10:00 PM UTC; 2 h old when this was written.",
            language.HowOld(Evening, Evening + Duration.FromHours(1), Duration.FromHours(2), TwelveHours));
        Assert.Equal("Told by the outlook, Sat 6 Mar 9:00 PM UTC", language.ToldBy(SpokenLetter.Outlook, Evening, TwelveHours));
    }

    private static PowerPlan PowerOf(double coldestC) => new(PowerBudget.Of(new PowerNeed
    {
        BatteriesWh = [99, 99],
        CameraAndRailW = 4,
        DurationS = 6 * 3600,
        ColdestC = coldestC,
    }))
    {
        On = new Interval(Evening, Evening + Duration.FromHours(6)),
        ColdestC = coldestC,
        Swaps = [],
        Empty = null,
        HeaterEmpty = null,
    };

    /// <summary>English, but for its clock.</summary>
    public class WithTwelveHours : DispatchProxy
    {
        protected override object? Invoke(MethodInfo? targetMethod, object?[]? args) =>
            targetMethod!.Name == $"get_{nameof(ILanguage.ClockPattern)}" ? "h:mm tt" : targetMethod.Invoke(English.Instance, args);
    }
}
