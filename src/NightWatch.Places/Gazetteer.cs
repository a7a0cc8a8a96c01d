using System.Text;

namespace NightWatch.Places;

/// <summary>Populated places of the world, found by where they are. Immutable.</summary>
/// <remarks>GeoNames data, CC BY 4.0; how it was made and its format stand in <c>Places/Gazetteer/README.md</c>.</remarks>
public sealed class Gazetteer
{
    /// <summary>What must be shown where its places are shown.</summary>
    public const string Attribution = "Populated places: GeoNames (geonames.org), CC BY 4.0";

    private const int Bands = 180;
    private const int LongitudeTurn = 360_000;
    private static readonly Lazy<Gazetteer> bundled = new(() => new Gazetteer(PackedNumbers.Embedded("gazetteer.bin.br")));
    private readonly int[] firstOfBand = new int[Bands + 1];
    private readonly int[] longitudes; // 0.001 degrees from 180 W, rising within a band
    private readonly short[] latitudes; // 0.001 degrees above the band's foot
    private readonly int[] populations;
    private readonly int[] nameStarts;
    private readonly byte[] names;

    private Gazetteer(PackedNumbers content)
    {
        var count = content.Next();
        longitudes = new int[count];
        latitudes = new short[count];
        populations = new int[count];
        nameStarts = new int[count + 1];
        for (var band = 0; band < Bands; band++) firstOfBand[band + 1] = firstOfBand[band] + content.Next();
        for (var band = 0; band < Bands; band++)
        {
            var longitude = 0;
            for (var i = firstOfBand[band]; i < firstOfBand[band + 1]; i++) longitudes[i] = longitude += content.Next();
        }

        for (var i = 0; i < count; i++) latitudes[i] = (short)content.Next();
        for (var i = 0; i < count; i++) populations[i] = content.Next() * 10;
        for (var i = 0; i < count; i++) nameStarts[i + 1] = nameStarts[i] + content.Next();
        names = content.Rest();
    }

    /// <summary>The places that come with the program; read at the first use, some 30 ms.</summary>
    public static Gazetteer Bundled => bundled.Value;

    /// <summary>Number of places.</summary>
    public int Count => longitudes.Length;

    /// <summary>The n-th place, from 0, in the order of latitude bands.</summary>
    public PopulatedPlace this[int i]
    {
        get
        {
            var band = Array.BinarySearch(firstOfBand, i);
            if (band < 0) band = ~band - 1;
            // Of empty bands that begin at the same place the last one has it.
            while (firstOfBand[band + 1] <= i) band++;
            return new PopulatedPlace(Name(i), band - 90 + latitudes[i] / 1000.0, longitudes[i] / 1000.0 - 180, populations[i]);
        }
    }

    /// <summary>Places within a distance, in no promised order.</summary>
    /// <param name="latitudeDeg">Degrees north.</param>
    /// <param name="longitudeDeg">Degrees east, −180 to 180.</param>
    /// <param name="reachKm">Distance, km.</param>
    /// <param name="leastPeoplePerKm2">Places with fewer people than this times the square of their distance in km are left out.</param>
    public IReadOnlyList<PopulatedPlace> Around(double latitudeDeg, double longitudeDeg, double reachKm, double leastPeoplePerKm2 = 0)
    {
        const double leastKmPerDegree = 110.5; // a degree of latitude is never shorter on this sphere (111.19) or the ellipsoid (110.57)
        var reachDeg = reachKm / leastKmPerDegree;
        var low = (int)Math.Floor(Math.Max(0, latitudeDeg + 90 - reachDeg));
        var high = (int)Math.Floor(Math.Min(Bands - 1, latitudeDeg + 90 + reachDeg));
        var highestDeg = Math.Min(90, Math.Abs(latitudeDeg) + reachDeg);
        // Half the width of the circle in longitude; the whole turn where it holds a pole.
        var widthDeg =
            highestDeg >= 90
                ? 180
                : Math.Asin(Math.Min(1, Math.Sin(reachDeg * Math.PI / 180) / Math.Cos(latitudeDeg * Math.PI / 180))) * 180 / Math.PI;
        var middle = (int)Math.Round((longitudeDeg + 180) * 1000);
        var width = (int)Math.Ceiling(widthDeg * 1000);

        var flatEnough = leastPeoplePerKm2 > 0 && widthDeg < 60;
        var narrowest = Math.Cos(latitudeDeg * Math.PI / 180) * Math.Cos(highestDeg * Math.PI / 180);
        var found = new List<PopulatedPlace>();
        for (var band = low; band <= high; band++)
        {
            if (widthDeg >= 180)
            {
                Take(band, 0, LongitudeTurn);
                continue;
            }

            Take(band, Math.Max(0, middle - width), Math.Min(LongitudeTurn, middle + width));
            if (middle - width < 0) Take(band, middle - width + LongitudeTurn, LongitudeTurn);
            if (middle + width > LongitudeTurn) Take(band, 0, middle + width - LongitudeTurn);
        }

        return found;

        // A first look on the flat map, without trigonometry; ten percent of slack covers its error.
        bool IsFaint(int band, int i)
        {
            var north = (band - 90 + latitudes[i] / 1000.0 - latitudeDeg) * 111.2;
            var turn = Math.Abs(longitudes[i] / 1000.0 - 180 - longitudeDeg);
            var east = Math.Min(turn, 360 - turn) * 111.2;
            return populations[i] < 0.9 * leastPeoplePerKm2 * (north * north + east * east * narrowest);
        }

        void Take(int band, int from, int to)
        {
            var end = firstOfBand[band + 1];
            var i = Array.BinarySearch(longitudes, firstOfBand[band], end - firstOfBand[band], from);
            if (i < 0) i = ~i;
            while (i > firstOfBand[band] && longitudes[i - 1] == from) i--;
            for (; i < end && longitudes[i] <= to; i++)
            {
                var latitude = band - 90 + latitudes[i] / 1000.0;
                var longitude = longitudes[i] / 1000.0 - 180;
                if (flatEnough && IsFaint(band, i)) continue;
                var km = GreatCircle.To(latitudeDeg, longitudeDeg, latitude, longitude).Km;
                if (km <= reachKm && populations[i] >= leastPeoplePerKm2 * km * km)
                    found.Add(new PopulatedPlace(Name(i), latitude, longitude, populations[i]));
            }
        }
    }

    private string Name(int i) => Encoding.UTF8.GetString(names, nameStarts[i], nameStarts[i + 1] - nameStarts[i]);
}
