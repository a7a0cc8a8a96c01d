using System.Text;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Observations;
using NightWatch.Weather.Tests.Recordings;
using NodaTime;

namespace NightWatch.Weather.Tests.Observations;

/// <summary>
/// Bodies written by hand after the fields of aviationweather.gov/data/api (JSON of /api/data/metar): nearly every one may be null, wind is
/// in knots, visibility in statute miles, a number or "10+"; and one recorded answer.
/// </summary>
public sealed class AerodromeReportsTests
{
    [Fact]
    public void A_report_is_read_with_its_station_time_place_and_figures()
    {
        var report = Single("""
            { "metar_id": 1, "icaoId": "FYWW", "receiptTime": "2027-06-04 21:05:12", "obsTime": 1812142800,
              "reportTime": "2027-06-04 21:00:00", "temp": 11, "dewp": 3,
              "wdir": "VRB", "wspd": 4, "wgst": 20, "visib": "6+", "altim": 1022, "slp": null, "qcField": 0, "wxString": null,
                "precip": null, "vertVis": null,
              "metarType": "METAR", "rawOb": "METAR FYWW 042100Z ...", "lat": -22.48, "lon": 17.471, "elev": 1719, "prior": 2,
                "name": "Windhoek Intl",
              "clouds": [ { "cover": "FEW", "base": 4000 }, { "cover": "SCT", "base": 9000 } ] }
            """);

        Assert.Equal(
            ("FYWW", Instant.FromUnixTimeSeconds(1812142800), -22.48, 17.471),
            (report.Station, report.At, report.LatitudeDeg, report.LongitudeDeg));
        // The greatest group, SCT: 3 to 4 eighths (WMO code table D-8).
        Assert.Equal(7 / 16.0, report.Sky.Fraction!.Value, 12);
        Assert.Equal(20 * 1852.0 / 3600, report.GustMps!.Value, 12); // the international knot
        Assert.Equal(6 * 1609.344, report.VisibilityM!.Value, 9); // the statute mile
        Assert.False(report.IsWet || report.IsFoggy);
    }

    [Theory]
    [InlineData("""[ { "cover": "OVC" } ]""", 1.0, false)]
    [InlineData("""[ { "cover": "CLR" } ]""", null, true)] // an automatic station sees nothing above 12 000 ft
    [InlineData("""[ { "cover": "CAVOK" } ]""", null, true)]
    [InlineData("""[ { "cover": null } ]""", null, false)]
    [InlineData("[]", null, false)]
    [InlineData("null", null, false)]
    public void Cloud_is_only_what_such_a_report_can_tell(string clouds, double? fraction, bool clearBelow)
    {
        var sky = Single($$"""{ "icaoId": "FYWW", "obsTime": 1812142800, "lat": -22.5, "lon": 17.5, "clouds": {{clouds}} }""").Sky;

        Assert.Equal((fraction, clearBelow), (sky.Fraction, sky.IsClearBelowOnly));
    }

    /// <summary>So real answers tell a sky without a layer: the code in "cover", the list empty or missing.</summary>
    [Theory]
    [InlineData("SKC", 0.0, false)] // an observer saw the whole sky
    [InlineData("CLR", null, true)] // nothing below 12 000 ft
    [InlineData("NSC", null, true)] // nothing of significance: below 5000 ft
    [InlineData("CAVOK", null, true)] // the same
    [InlineData("NCD", null, true)] // an automatic station detected nothing
    [InlineData("///", null, false)]
    public void Without_a_layer_the_report_s_own_cover_tells(string cover, double? fraction, bool clearBelow)
    {
        foreach (var layers in (string[])["""
            "clouds": [],
            """, """
            "clouds": null,
            """, ""])
        {
            var sky = Single(
                $$"""{ "icaoId": "FYWW", "obsTime": 1812142800, "lat": -22.5, "lon": 17.5, {{layers}} "cover": "{{cover}}" }"""
            ).Sky;

            Assert.Equal((fraction, clearBelow), (sky.Fraction, sky.IsClearBelowOnly));
        }
    }

    [Fact]
    public void Layers_are_told_before_the_report_s_own_cover() =>
        Assert.Equal(
            ObservedSky.Of(["FEW", "SCT"]),
            Single(
                """
                { "icaoId": "FYWW", "obsTime": 1812142800, "lat": -22.5, "lon": 17.5, "cover": "SCT", "clouds": [ { "cover": "FEW" },
                  { "cover": "SCT" } ] }
                """
            ).Sky);

    /// <summary>
    /// Counted in the recording apart from this code: 324 of 328 carry a cover, 202 of them CLR and one SKC without a layer.
    /// </summary>
    [Fact]
    public void Of_recorded_reports_the_cloud_is_known_wherever_they_tell_it()
    {
        var reports = AerodromeReports.Read(Recording.Bytes(Recording.Aerodromes));

        Assert.Equal(328, reports.Count);
        Assert.Equal(202, reports.Count(report => report.Sky.IsClearBelowOnly));
        Assert.Equal(122, reports.Count(report => report.Sky.Fraction is not null));
        Assert.Equal(
            ["KESF", "KGAD", "KHUT", "KPUB"],
            reports.Where(report => report.Sky == ObservedSky.Unknown).Select(report => report.Station).Order());
        Assert.Equal(0.0, Assert.Single(reports, report => report.Station == "KGYR").Sky.Fraction);
    }

    /// <summary>
    /// Counted in the recording apart from this code: 179 reports say AUTO, and of the other 149 36 have a layer above 12,500 feet, 1 SKC.
    /// </summary>
    [Fact]
    public void Of_recorded_reports_few_saw_the_whole_sky()
    {
        var reports = AerodromeReports.Read(Recording.Bytes(Recording.Aerodromes));

        Assert.Equal(179, reports.Count(report => report.Sight.IsAutomatic));
        Assert.Equal(37, reports.Count(report => report.Sight.BlindAboveM is null));
        Assert.All(reports.Where(report => report.Sight.IsAutomatic), report => Assert.Equal(3810, report.Sight.BlindAboveM!.Value, 9));
        // Every CLR is open to both readings; every overcast says the same by both.
        Assert.All(
            reports.Where(report => report.Sky.IsClearBelowOnly),
            report => Assert.Equal((0.0, 1.0), (report.LeastCloud, report.MostCloud)));
        Assert.All(
            reports.Where(report => report.Sky.Fraction == 1), report => Assert.Equal((1.0, 1.0), (report.LeastCloud, report.MostCloud)));
    }

    /// <summary>
    /// Counted in the recording apart from this code; a sky worth nothing from 45 % cloud on, as a watch has it unless told otherwise.
    /// </summary>
    [Fact]
    public void Of_recorded_reports_most_leave_open_whether_the_sky_was_usable()
    {
        var reports = AerodromeReports.Read(Recording.Bytes(Recording.Aerodromes));
        Assert.Equal((28, 0, 148, 3), Told(automatic: true));
        Assert.Equal((61, 15, 72, 1), Told(automatic: false));

        (int Unusable, int Usable, int Open, int None) Told(bool automatic)
        {
            var of = reports.Where(report => report.Sight.IsAutomatic == automatic).ToList();
            return (
                of.Count(report => report.LeastCloud >= 0.45), of.Count(report => report.MostCloud < 0.45),
                of.Count(report => report.LeastCloud < 0.45 && report.MostCloud >= 0.45), of.Count(report => report.LeastCloud is null));
        }
    }

    [Theory]
    [InlineData("METAR EDDF 012150Z AUTO 24005KT 9999 NCD 05/02 Q1020", "NCD", null, true, 12_500.0)]
    [InlineData("METAR KPHX 190351Z 23006KT 10SM CLR 29/M10 A2984 RMK AO2", "CLR", null, false, 12_500.0)] // nobody wrote SKC
    [InlineData("METAR KXYZ 190351Z 23006KT 10SM FEW020 20/10 A2984", "FEW", 2000.0, false, 12_500.0)]
    [InlineData("METAR KLAS 190356Z 27003KT 10SM FEW250 21/M16 A2998", "FEW", 25_000.0, false, null)] // no instrument there sees so high
    [InlineData("METAR FYWW 042100Z 24005KT 9999 SKC 11/03 Q1022", "SKC", null, false, null)]
    [InlineData("METAR FYWW 042100Z AUTO 24005KT 9999 SKC 11/03 Q1022", "SKC", null, true, 12_500.0)]
    [InlineData("METAR EGLL 012150Z 24005KT 9999 NSC 05/02 Q1020", "NSC", null, false, 5000.0)]
    [InlineData("METAR EGLL 012150Z 24005KT CAVOK 05/02 Q1020", "CAVOK", null, false, 5000.0)]
    [InlineData("METAR EGLL 012150Z 24005KT 9999 FEW030 05/02 Q1020", "FEW", 3000.0, false, 5000.0)]
    [InlineData("METAR KXYZ 190351Z 23006KT 10SM FEW250 20/10 A2984 RMK AUTO", "FEW", 25_000.0, false, null)] // a remark is no mark
    public void How_high_a_station_sees_is_told_by_its_report(
        string raw, string cover, double? baseFeet, bool automatic, double? blindAboveFeet)
    {
        var at = baseFeet is { } feet ? FormattableString.Invariant($", \"base\": {feet}") : "";
        var report = Single(
            $$"""{ "icaoId": "FYWW", "obsTime": 1812142800, "lat": -22.5, "lon": 17.5""" +
            $$""", "rawOb": "{{raw}}", "clouds": [ { "cover": "{{cover}}"{{at}} } ] }"""
        );

        Assert.Equal(new StationSight(automatic, blindAboveFeet * 0.3048), report.Sight);
    }

    [Fact]
    public void A_sky_that_is_obscured_is_covered() =>
        Assert.Equal(
            1.0,
            Single("""{ "icaoId": "FYWW", "obsTime": 1812142800, "lat": -22.5, "lon": 17.5, "vertVis": 100, "clouds": [] }""").Sky.Fraction
        );

    // Present weather groups of WMO code table 4678.
    [Theory]
    [InlineData("-RA BR", true, false)]
    [InlineData("+TSRA", true, false)]
    [InlineData("SHSN", true, false)]
    [InlineData("FZDZ FG", true, true)]
    [InlineData("FZFG", false, true)]
    [InlineData("FG", false, true)]
    // Shallow fog is lower than two metres, patches and partial fog leave parts of the aerodrome in sight.
    [InlineData("MIFG", false, false)]
    [InlineData("BCFG", false, false)]
    [InlineData("PRFG BR", false, false)]
    [InlineData("-RA VCFG", true, false)]
    [InlineData("VCSH", false, false)]
    [InlineData("VCFG BR", false, false)]
    [InlineData("BLSN", false, false)]
    [InlineData("TS", false, false)]
    [InlineData("HZ", false, false)]
    public void Rain_and_fog_at_the_station_are_told_from_those_nearby(string weather, bool wet, bool fog)
    {
        var report = Single($$"""{ "icaoId": "FYWW", "obsTime": 1812142800, "lat": -22.5, "lon": 17.5, "wxString": "{{weather}}" }""");

        Assert.Equal((wet, fog), (report.IsWet, report.IsFoggy));
    }

    [Theory]
    [InlineData("{ \"icaoId\": null, \"obsTime\": 1812142800, \"lat\": 1, \"lon\": 1 }")]
    [InlineData("{ \"icaoId\": \"FYWW\", \"obsTime\": \"soon\", \"lat\": 1, \"lon\": 1 }")]
    [InlineData("{ \"icaoId\": \"FYWW\", \"obsTime\": 1e300, \"lat\": 1, \"lon\": 1 }")]
    [InlineData("{ \"icaoId\": \"FYWW\", \"obsTime\": 1812142800 }")]
    [InlineData("null")]
    [InlineData("7")]
    public void A_report_without_station_time_or_place_is_left_out(string item) => Assert.Empty(Read($"[ {item} ]"));

    [Theory]
    [InlineData("{}")]
    [InlineData("error")]
    [InlineData("[ {")]
    public void What_is_no_list_of_reports_is_refused(string body) => Assert.Throws<ForecastFormatException>(() => Read(body));

    [Fact]
    public void A_list_whose_text_is_not_UTF_8_is_refused() =>
        Assert.Throws<ForecastFormatException>(() =>
            AerodromeReports.Read(
                Encoding.Latin1.GetBytes("[ { \"icaoId\": \"F\u00FFWW\", \"obsTime\": 1812142800, \"lat\": 1, \"lon\": 1 } ]")));

    [Fact]
    public void An_empty_body_has_no_reports() => Assert.Empty(Read(""));

    private static IReadOnlyList<AerodromeReport> Read(string body) => AerodromeReports.Read(Encoding.UTF8.GetBytes(body));

    private static AerodromeReport Single(string item) => Assert.Single(Read($"[ {item} ]"));
}
