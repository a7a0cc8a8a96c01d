using System.Text;

namespace NightWatch.Places;

/// <summary>Finds populated places by name. Immutable.</summary>
/// <param name="gazetteer">The places.</param>
public sealed class GazetteerIndex(Gazetteer gazetteer)
{
    private const int Longest = 100;

    private static readonly Lazy<GazetteerIndex> bundled = new(() => new GazetteerIndex(Gazetteer.Bundled));

    // All folded names in one text, a line each, so that a search is one pass over memory.
    private readonly Lazy<(byte[] Text, int[] Starts)> names = new(() => Fold(gazetteer));

    /// <summary>Over the places that come with the program; made at the first use.</summary>
    public static GazetteerIndex Bundled => bundled.Value;

    /// <summary>
    /// Places of a name, whatever its case and marks: first those called so, then those whose name begins so, then those with a word that
    /// does; within each the most populous first.
    /// </summary>
    /// <param name="name">As typed; what follows a comma (a country, which the gazetteer does not know) is left out.</param>
    /// <param name="most">At most so many.</param>
    public IReadOnlyList<PopulatedPlace> Find(string name, int most)
    {
        ArgumentNullException.ThrowIfNull(name);
        var wanted = FoldedName.Of(name.Split(',')[0]);
        if (wanted.Length is 0 or > Longest) return [];
        var (text, starts) = names.Value;
        var sought = Encoding.UTF8.GetBytes(wanted);
        var found = new List<(int Rank, PopulatedPlace Place)>();
        var from = 0;
        while (text.AsSpan(from).IndexOf(sought) is var hit and >= 0)
        {
            var at = from + hit;
            var place = Array.BinarySearch(starts, at);
            if (place < 0) place = ~place - 1;
            from = at + 1;
            if (at > starts[place] && text[at - 1] != (byte)' ') continue;
            var rank = at > starts[place] ? 2 : at + sought.Length == starts[place + 1] - 1 ? 0 : 1;
            found.Add((rank, gazetteer[place]));
            // The next line: a place is found once.
            from = starts[place + 1];
        }

        return [.. found.OrderBy(f => f.Rank).ThenByDescending(f => f.Place.Population).Take(most).Select(f => f.Place)];
    }

    private static (byte[] Text, int[] Starts) Fold(Gazetteer gazetteer)
    {
        using var text = new MemoryStream();
        var starts = new int[gazetteer.Count + 1];
        for (var i = 0; i < gazetteer.Count; i++)
        {
            text.Write(Encoding.UTF8.GetBytes(FoldedName.Of(gazetteer[i].Name) + "\n"));
            starts[i + 1] = (int)text.Length;
        }

        return (text.ToArray(), starts);
    }
}
