using NightWatch.Places;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.SkyBrightness;

/// <summary>
/// The moonless night sky over one site: natural light and town glow, by direction. Made once a site, asked in constant time.
/// </summary>
public sealed class SiteSkyGlow
{
    /// <summary>Towns farther than this are left out, km: a million people add 1 % there.</summary>
    public const double ReachKm = 250;

    /// <summary>Towns with fewer people than this times the square of their distance in km are left out: they add 0.1 % at most.</summary>
    public const double LeastPeoplePerKm2 = 0.3;

    private const int Sectors = 72;
    private const double SectorDeg = 360.0 / Sectors;
    private static readonly double[] widths = [.. Enumerable.Range(0, Sectors).Select(apart => Width(Apart(apart, 0)))];
    private readonly double[] towards = new double[Sectors]; // increase at 45° towards each sector, beyond the zenith's
    private readonly double overhead; // the towns' at the zenith
    private readonly double natural; // the natural sky against the reference

    private SiteSkyGlow(double natural, double overhead, bool isMeasured, double elevationM)
    {
        (this.natural, this.overhead) = (natural, overhead);
        IsMeasured = isMeasured;
        Extinction = Atmosphere.UsualExtinction(elevationM);
    }

    /// <summary>The brightness was measured at the site; otherwise it is estimated from the towns around.</summary>
    public bool IsMeasured { get; }

    /// <summary>V-band extinction used, magnitudes per air mass.</summary>
    public double Extinction { get; }

    /// <summary>Zenith brightness, V mag/arcsec².</summary>
    public double ZenithMag => NaturalSky.ZenithMag - 2.5 * Math.Log10(natural + overhead);

    /// <summary>Likely range of the zenith brightness, darkest and brightest, V mag/arcsec².</summary>
    /// <remarks>
    /// Measured: ±0.1, the usual accuracy of a hand-held meter (common practice). Estimated: Walker's scatter and 0.3 of airglow.
    /// </remarks>
    public (double Darkest, double Brightest) ZenithRange =>
        IsMeasured
            ? (ZenithMag + 0.1, ZenithMag - 0.1)
            : (
                NaturalSky.ZenithMag - 2.5 * Math.Log10(1 + overhead / WalkersLaw.Scatter),
                NaturalSky.ZenithMag - 2.5 * Math.Log10(1 + overhead * WalkersLaw.Scatter) - NaturalSky.AirglowMag);

    /// <summary>Directions lit up most, strongest first, at most six, each at least 0.02 mag.</summary>
    public IReadOnlyList<GlowDome> Domes { get; private init; } = [];

    /// <summary>Builds the sky of a site from the towns of the bundled gazetteer.</summary>
    /// <param name="position">The site.</param>
    /// <param name="measuredZenithMag">Its measured zenith brightness, V mag/arcsec²; null: estimated.</param>
    public static SiteSkyGlow Of(GeoPosition position, double? measuredZenithMag) => Of(
        position, measuredZenithMag, Gazetteer.Bundled.Around(position.LatitudeDeg, position.LongitudeDeg, ReachKm, LeastPeoplePerKm2));

    /// <summary>Builds the sky of a site.</summary>
    /// <param name="position">The site.</param>
    /// <param name="measuredZenithMag">Its measured zenith brightness, V mag/arcsec²; null: estimated.</param>
    /// <param name="places">Towns around it; those beyond <see cref="ReachKm"/> are skipped.</param>
    /// <remarks>
    /// A measured value is kept as it is. Of what it exceeds the reference sky by, the towns are charged with no more than the factor by
    /// which real towns scatter about Walker's law, and no less where airglow can make up for it; the rest is the natural sky's own.
    /// </remarks>
    public static SiteSkyGlow Of(GeoPosition position, double? measuredZenithMag, IEnumerable<PopulatedPlace> places)
    {
        var zenith = 0.0;
        var lit = new List<(double Azimuth, double Increase, PopulatedPlace Place, double Km)>();
        foreach (var place in places)
        {
            var (km, azimuth) = GreatCircle.To(position.LatitudeDeg, position.LongitudeDeg, place.LatitudeDeg, place.LongitudeDeg);
            if (km > ReachKm) continue;
            var increase = WalkersLaw.Increase(place.Population, km);
            zenith += increase * WalkersLaw.ZenithShare(place.Population, km);
            lit.Add((azimuth, increase, place, km));
        }

        var (airglow, towns) = measuredZenithMag is { } measured ? Split(measured, zenith) : (1, zenith);
        var scale = zenith > 0 ? towns / zenith : 0;
        var bySector = new double[Sectors];
        foreach (var (azimuth, increase, _, _) in lit) bySector[(int)(azimuth / SectorDeg) % Sectors] += increase * scale;
        var glow = new SiteSkyGlow(airglow, towns, measuredZenithMag is not null, position.ElevationM) { Domes = DomesOf(bySector, lit) };
        for (var to = 0; to < Sectors; to++)
        {
            for (var from = 0; from < Sectors; from++) glow.towards[to] += bySector[from] * 0.75 * widths[Math.Abs(to - from)];
        }

        return glow;
    }

    /// <summary>Natural light and town glow at a direction, nanolamberts.</summary>
    /// <param name="altitudeDeg">Altitude, degrees.</param>
    /// <param name="azimuthDeg">From north through east, degrees, 0 to 360.</param>
    /// <remarks>
    /// A town counts in full within 30° of its azimuth up to 45° altitude, with a quarter overhead and behind (engineering choice).
    /// Lower than 45° towards a large town the real sky is brighter than this.
    /// </remarks>
    public double Nanolamberts(double altitudeDeg, double azimuthDeg) =>
        NaturalSky.Nanolamberts(NaturalSky.ZenithNanolamberts, altitudeDeg, Extinction) * (natural + Increase(altitudeDeg, azimuthDeg));

    /// <summary>Town glow at a direction as a fraction of the reference sky there.</summary>
    /// <param name="altitudeDeg">Altitude, degrees.</param>
    /// <param name="azimuthDeg">From north through east, degrees, 0 to 360.</param>
    public double Increase(double altitudeDeg, double azimuthDeg)
    {
        var place = azimuthDeg / SectorDeg - 0.5;
        var low = (int)Math.Floor(place);
        var share = place - low;
        var side = towards[(low + Sectors) % Sectors] * (1 - share) + towards[(low + 1 + Sectors) % Sectors] * share;
        var down = altitudeDeg <= 45 ? 1 : Math.Max(0, Math.Cos((altitudeDeg - 45) * 2 * Math.PI / 180));
        return overhead + side * down;
    }

    /// <summary>A measured zenith as natural light and towns' light, both against the reference sky.</summary>
    private static (double Natural, double Towns) Split(double measuredMag, double byWalker)
    {
        var total = Math.Pow(10, 0.4 * (NaturalSky.ZenithMag - measuredMag));
        var darkest = Math.Pow(10, -0.4 * NaturalSky.AirglowMag);
        var towns = Math.Clamp(total - 1, byWalker / WalkersLaw.Scatter, byWalker * WalkersLaw.Scatter);
        towns = Math.Clamp(towns, 0, Math.Max(0, total - darkest));
        return (total - towns, towns);
    }

    private static double Apart(int sector, int other)
    {
        var apart = Math.Abs(sector - other) % Sectors;
        return Math.Min(apart, Sectors - apart) * SectorDeg;
    }

    // 1 within 30 degrees of the town's azimuth, 0 from 90 degrees on.
    private static double Width(double apartDeg) =>
        apartDeg <= 30 ? 1 : apartDeg >= 90 ? 0 : (1 + Math.Cos((apartDeg - 30) * 3 * Math.PI / 180)) / 2;

    private static List<GlowDome> DomesOf(double[] bySector, List<(double Azimuth, double Increase, PopulatedPlace Place, double Km)> lit)
    {
        const int reach = 3; // sectors either side that belong to one dome: 15 degrees
        var left = (double[])bySector.Clone();
        var domes = new List<GlowDome>();
        while (domes.Count < 6)
        {
            var middle = 0;
            var most = 0.0;
            for (var i = 0; i < Sectors; i++)
            {
                var sum = 0.0;
                for (var j = -reach; j <= reach; j++) sum += left[(i + j + Sectors) % Sectors];
                if (sum > most * 1.000001) (most, middle) = (sum, i);
            }

            var brightening = 2.5 * Math.Log10(1 + most);
            if (brightening < 0.02) break;
            var strongest = lit.Where(l => Apart((int)(l.Azimuth / SectorDeg) % Sectors, middle) <= reach * SectorDeg)
                .MaxBy(l => l.Increase);
            domes.Add(new GlowDome(strongest.Azimuth, brightening, strongest.Place, strongest.Km));
            for (var j = -reach; j <= reach; j++) left[(middle + j + Sectors) % Sectors] = 0;
        }

        return domes;
    }
}
