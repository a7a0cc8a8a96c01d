using NightWatch.Places;
using NightWatch.Planning.Sources;

namespace NightWatch.Words;

// References behind the figures.
public sealed partial class English
{
    private const string Light =
        "natural sky and moonlight Krisciunas and Schaefer 1991, PASP 103, 1033; contrast: the subject's light dimmed by Kasten and " +
        "Young 1989 air mass over the sky's light";

    /// <inheritdoc/>
    public string Of(Formula formula) =>
        formula switch
        {
            Formula.FeedValues => "The feed's own values over the run",
            Formula.FeedRuns => "Times and values of the feeds' runs",
            Formula.SkyWindows => "Windows of Sun and subject less the watch's margins",
            Formula.AstronomicalTwilight => "Astronomical twilight: Sun's centre at −18°",
            Formula.MoonLight => "Krisciunas and Schaefer 1991, PASP 103, 1033 (clear sky)",
            Formula.TownsUnderMeasuredZenith => $"Walker 1977, PASP 89, 405, over the measured zenith; {Gazetteer.Attribution}",
            Formula.TownsOverNaturalSky => $"Walker 1977, PASP 89, 405, over 22.0 mag (Falchi et al. 2016); {Gazetteer.Attribution}",
            Formula.MeasuredSky =>
                $"Zenith measured at the site (±0.1 mag, common practice); its directions from the towns by Walker 1977, PASP 89, 405. " +
                $"{Gazetteer.Attribution}; {Light}",
            Formula.EstimatedSky =>
                $"Zenith estimated from the towns by Walker 1977, PASP 89, 405, within a factor of three in light, over 22.0 mag (Falchi " +
                $"et al. 2016). {Gazetteer.Attribution}; {Light}",
            Formula.ChanceModel =>
                "Logistic model of the feed's runs, by archived forecasts and the own record; cost/loss ratio, Richardson 2000",
            Formula.FogByVisibility => "WMO: visibility below 1 km",
            Formula.CloudSkill => "Ye and Chen 2013, MNRAS 428, 3288",
            Formula.InlandGusts => "WMO/TD-No. 1555, in-land gust factor 1.66 (from memory)",
            Formula.LensHeatBalance =>
                "Heat balance of the front element: Berdahl and Martin 1984 sky, Watmuff et al. 1977 wind, WMO-No. 8 dew point",
            Formula.LensPlan =>
                "Heat balance of the front element: sky emissivity Berdahl and Martin 1984 with cloud after Unsworth and Monteith 1975, " +
                "wind Watmuff et al. 1977, dew and frost point WMO-No. 8; a strap passes a fifth of its power to the glass (engineering " +
                "value)",
            Formula.GroundWater => "Water balance: Kohler and Linsley 1951 for rain already fallen, FAO-56 for drying",
            Formula.GroundPlan =>
                "Water balance of the top of the ground: rain already fallen weighed by Kohler and Linsley 1951, further rain from the " +
                "forecast, drying by FAO-56 Penman-Monteith, drainage by kind of ground (engineering values)",
            Formula.FrameProjection => "Gnomonic projection (Calabretta and Greisen 2002) along the move",
            Formula.FramingPlan =>
                "Gnomonic projection (Calabretta and Greisen 2002, A&A 395, 1077) along the move, stars at the Earth's turn (IERS " +
                "Conventions 2010); a twentieth of each half side is kept free at the edges (engineering choice)",
            Formula.MotionPlan => "Travel over frames less one; ramps are half parabolas over the eased shares (engineering choice)",
            Formula.SkyExposure =>
                "ISO 12232 exposure of the clear sky's luminance; makers' ratings differ by up to a stop, one test frame calibrates it",
            Formula.SkyLevelPlan =>
                "ISO 12232:2019 saturation speed over the clear sky's luminance (natural sky and town glow, Moon, twilight); makers' " +
                "ratings differ by up to a stop, one test frame calibrates it",
            Formula.SequencePlan =>
                "Trail from the Earth's turn (IERS Conventions 2010) at the pixel pitch for the fastest declination in the frame; 600 / " +
                "focal length is common practice without a source; NPF forms F. Michaud 2016; ISO by ISO 12232:2019 for the wished share " +
                "of saturation",
            Formula.BatteryEnergy =>
                "Energy balance with lithium-ion cells derated for cold (engineering values; your own measurement is better)",
            Formula.PowerPlan =>
                "Energy balance; lithium-ion cells derated for cold, converters 87 %, aged packs 90 %, a quarter in reserve (engineering " +
                "values: your own measurement is better)",
            Formula.CardRoom => "Frames times the kit's file size; cards take about 93 % of their label (engineering value)",
            Formula.ThunderRule => "30-30 rule, NOAA National Weather Service",
            Formula.ThunderAndRule => "30-30 rule, US National Weather Service",
            Formula.FloodDepths =>
                "Turn Around Don't Drown, US National Weather Service; heavy rain by the AMS Glossary, 20 mm/h an engineering choice",
            Formula.WindChill => "Wind chill index 2001 and frostbite times, Environment Canada",
            Formula.HeatIndex => "Heat index, Rothfusz 1990, US National Weather Service SR 90-23",
            Formula.Beaufort => "Beaufort 7 and 8, WMO-No. 306",
            Formula.RoadIce => "Road 3 K below the air under a clear sky (engineering choice): no road is surveyed here",
            Formula.RoadFog => "Fog below 1000 m (WMO); dense below 200 m, common practice of road weather services",
            Formula.HoursAwake => "Williamson and Feyer 2000, Occupational and Environmental Medicine 57, 649",
            Formula.ColdCells => "Usual cell specifications; Jaguemont et al. 2016, Applied Energy 164, 99",
            Formula.CarbonMonoxide => "WHO guidelines on carbon monoxide",
            _ => throw new ArgumentOutOfRangeException(nameof(formula), formula, "Accepted: one of the formulas."),
        };
}
