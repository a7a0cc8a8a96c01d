using NightWatch.Planning.Conditions;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Subjects;
using NightWatch.Store.Connections;
using NightWatch.Store.Tests.Databases;
using NightWatch.Store.Verdicts;
using NodaTime;

namespace NightWatch.Store.Tests.Verdicts;

public sealed class StoredReasonsTests
{
    private static readonly Interval Run = new(Given.Now, Given.Now + Duration.FromHours(4));

    /// <summary>As the release before 2026-12 wrote a row.</summary>
    private const string OldRow =
        """
        [{"factor":"wind","severity":"caution","when":{"start":"2027-03-04T18:00:00Z","end":"2027-03-04T22:00:00Z"},"value":11.6,"limit":9,
          "unit":"metresPerSecond",
        "text":"Gusts reach 11.6 m/s around 20:00; a caution from 9, a no-go from 14.",
          "fix":"Gusts below 9 m/s through the run, or a place in the lee.",
        "source":"The feed's own values over the run","isUnknown":false},
        {"factor":"fog","severity":"ok","when":null,"value":null,"limit":0.1,"unit":"fraction","text":"Fog is not known.","fix":null,
          "source":null,"isUnknown":true}]
        """;

    [Fact]
    public void Reasons_of_the_release_before_are_read_as_they_were_said()
    {
        var reasons = StoredReasons.Read(OldRow);

        var wind = Assert.IsType<Recorded>(reasons[0]);
        Assert.Equal(
            (Factor.Wind, Severity.Caution, 11.6, 9.0, Unit.MetresPerSecond),
            (wind.Factor, wind.Severity, wind.Value, wind.Limit, wind.Unit));
        Assert.Equal("Gusts reach 11.6 m/s around 20:00; a caution from 9, a no-go from 14.", wind.Text);
        Assert.Equal("Gusts below 9 m/s through the run, or a place in the lee.", wind.Fix);
        Assert.Equal(new Interval(Given.Now, Given.Now + Duration.FromHours(4)), wind.When);
        Assert.True(reasons[1].IsUnknown);
    }

    [Fact]
    public void A_reason_is_kept_as_its_figures_and_comes_back_equal()
    {
        Reason[] reasons =
        [
            new Gusts(Severity.Caution, Run, 11.6, Given.Now, new(9, 14)) { Mend = new Mend.GustsBelow(9) },
            new InHarmsWay(Severity.Stop, new Caution.Cold(HazardLevel.Stop, -56, 1)),
            new SiteGlow(Severity.Ok, false, 21.4, 21.1, 21.7, new PathDome("Tsumeb", 35_000, 86, 12, 0.2, 40, Given.Now), 0.1)
            {
                Contrast = new(0.5, 0.8, Given.Now),
            },
            new SubjectTooLow(new Subject.FixedPoint("The loop", 84, -5), null, 10),
            new NoForecast() { Mend = new Mend.Knowledge(Mend.Missing.Forecast) },
            .. StoredReasons.Read(OldRow),
        ];

        var kept = StoredReasons.Write(reasons);

        Assert.Equal(reasons, StoredReasons.Read(kept));
        Assert.StartsWith(
            """[{"kind":"gusts","gustMps":11.6,"at":"2027-03-04T18:00:00Z","limitsMps":{"caution":9,"stop":14}""" +
            ""","severity":"caution","when":""",
            kept,
            StringComparison.Ordinal);
        Assert.Contains(""" "mend":{"kind":"gustsBelow","gustMps":9} """.Trim(), kept, StringComparison.Ordinal);
    }

    /// <summary>
    /// Rows name their cases: a name that is gone would make them unreadable. A new case is a new line here; none may go.
    /// </summary>
    [Theory]
    [InlineData(
        typeof(Reason),
        "cardRoom cloudMean cloudNotKnown coarseForecast dewAfterHeater dewHeldOff dewNotKnown dewOnBareLens dewThroughHeater " +
        "fogNotKnown fogRuledOut fogShare forecastAge groundNotKnown groundWetness gusts gustsFromMeanWind inFrame inHarmsWay " +
        "lensStaysDry moonLight neverDark neverUpInTheDark noForecast packsInUnknownCold packsLast packsRunOut packsTooCold rainAmount " +
        "rainChance rainChanceNotKnown rainNotKnown recorded runLength secondForecast siteGlow skyLevelHeld skyWashedOut subjectTooLow " +
        "thunderChance thunderNotKnown tooFarAhead usableNight windNotKnown"
    )]
    [InlineData(
        typeof(Mend),
        "card chanceBelow cloudAtMost cloudBelow darkerSite dryFor firmSpots fogBelow gustsBelow heater heaterEnergy knowledge " +
        "lessExposure meanWindBelow moonDown nearerNight nightWithoutIt otherAim otherDate packs shorterRun warmPacks"
    )]
    [InlineData(typeof(Caution), "carbonMonoxide cold coldCells flood foggyRoad gusts heat icyRoad longAwake thunder thunderNotTold")]
    public void Names_of_cases_stay(Type closed, string names) =>
        Assert.Equal(names.Split(' '), StoreJson.CasesOf(closed).Select(StoreJson.NameOf).Order(StringComparer.Ordinal));
}
