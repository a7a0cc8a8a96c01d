using System.Collections;

namespace NightWatch.Places;

/// <summary>Which time zone holds where: the world as quarters of quarters down to about a kilometre. Immutable.</summary>
/// <remarks>
/// timezone-boundary-builder data from OpenStreetMap, ODbL; how it was made and its format stand in <c>Places/Zones/README.md</c>.
/// </remarks>
public sealed class ZoneMap
{
    /// <summary>What must be shown where its answers are shown.</summary>
    public const string Attribution =
        "Time zone boundaries: timezone-boundary-builder, from OpenStreetMap (openstreetmap.org/copyright), ODbL 1.0";

    private const double East = 179.9999;
    private const double North = 89.9999;
    private static readonly Lazy<ZoneMap> bundled = new(() => new ZoneMap(PackedNumbers.Embedded("zones.bin.br")));
    private readonly string[] names;

    // A cut node: where its four quarters begin (1 and up). A leaf: the zone, below or at 0; 0 is the sea.
    private readonly int[] nodes;

    private ZoneMap(PackedNumbers content)
    {
        names = new string[content.Next()];
        for (var i = 0; i < names.Length; i++) names[i] = content.Text(content.Next());
        var count = content.Next();
        var cuts = new BitArray(content.Bytes((count + 7) / 8).ToArray());
        var recent = Enumerable.Range(0, names.Length + 1).ToList();
        nodes = new int[count];
        var (read, free) = (0, 1);
        Fill(0);

        // Depth first as they were written; the four quarters of a node get neighbouring places.
        void Fill(int node)
        {
            if (!cuts[read++])
            {
                var place = content.Next();
                var zone = recent[place];
                recent.RemoveAt(place);
                recent.Insert(0, zone);
                nodes[node] = -zone;
                return;
            }

            var quarters = free;
            free += 4;
            nodes[node] = quarters;
            for (var i = 0; i < 4; i++) Fill(quarters + i);
        }
    }

    /// <summary>The map that comes with the program; read at the first use.</summary>
    public static ZoneMap Bundled => bundled.Value;

    /// <summary>IANA id of the zone at a place; at sea the nautical zone, "Etc/GMT+3" being three hours behind UTC.</summary>
    /// <param name="latitudeDeg">Degrees north, −90 to 90.</param>
    /// <param name="longitudeDeg">Degrees east, −180 to 180.</param>
    public string At(double latitudeDeg, double longitudeDeg)
    {
        var (x, y) = (Math.Clamp(longitudeDeg, -East, East), Math.Clamp(latitudeDeg, -North, North));
        var (left, bottom, right, top) = (-East, -North, East, North);
        var node = nodes[0];
        while (node > 0)
        {
            var (middleX, middleY) = ((left + right) / 2, (bottom + top) / 2);
            // North-east, north-west, south-west, south-east.
            var quarter = y >= middleY ? x >= middleX ? 0 : 1 : x < middleX ? 2 : 3;
            if (quarter is 0 or 3) left = middleX;
            else right = middleX;
            if (quarter is 0 or 1) bottom = middleY;
            else top = middleY;
            node = nodes[node + quarter];
        }

        return node == 0 ? AtSea(longitudeDeg) : names[-node - 1];
    }

    /// <summary>
    /// The zones at and around a place, the place's own first: a border may run here, and people near one may keep the other side's time.
    /// </summary>
    /// <param name="latitudeDeg">Degrees north.</param>
    /// <param name="longitudeDeg">Degrees east.</param>
    /// <param name="reachKm">How far around, km.</param>
    public IReadOnlyList<string> Near(double latitudeDeg, double longitudeDeg, double reachKm)
    {
        const double kmPerDegree = 111.2;
        var found = new List<string> { At(latitudeDeg, longitudeDeg) };
        for (var ring = 1; ring <= 3; ring++)
        {
            for (var azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += 30)
            {
                var (east, north) = Math.SinCos(azimuthDeg * Math.PI / 180);
                var reachDeg = reachKm * ring / 3 / kmPerDegree;
                var latitude = Math.Clamp(latitudeDeg + north * reachDeg, -90, 90);
                var longitude = longitudeDeg + east * reachDeg / Math.Max(0.05, Math.Cos(latitudeDeg * Math.PI / 180));
                var zone = At(latitude, longitude - 360 * Math.Floor((longitude + 180) / 360));
                if (!found.Contains(zone)) found.Add(zone);
            }
        }

        return found;
    }

    private static string AtSea(double longitudeDeg)
    {
        // Hours count west in these ids (IANA tz database, file etcetera).
        var hours = (int)Math.Round(longitudeDeg / 15, MidpointRounding.AwayFromZero);
        return hours == 0 ? "Etc/GMT" : FormattableString.Invariant($"Etc/GMT{(hours > 0 ? '-' : '+')}{Math.Abs(hours)}");
    }
}
