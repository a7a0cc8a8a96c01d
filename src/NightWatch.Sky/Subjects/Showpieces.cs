using System.Text.RegularExpressions;
using NightWatch.Sky.Tables;

namespace NightWatch.Sky.Subjects;

/// <summary>A short table of the sky's showpieces, so that "M 31" will do for a subject.</summary>
/// <remarks>Positions: OpenNGC (Mattia Verga and contributors, CC-BY-SA-4.0), rounded to 2″. Provenance: Tables/README.md.</remarks>
public static partial class Showpieces
{
    /// <summary>All of them, by catalogue.</summary>
    public static IReadOnlyList<Showpiece> All { get; } =
    [
        .. PublishedTable
            .Rows("showpieces.tsv", 68, "12740c30f613ca1dfebaa649eebd6bd8a36189d79b5d2703508a45e58a5d876e")
            .Select(row => new Showpiece(
                Split(row[0]), Split(row[1]), row[2], PublishedTable.Number(row[3]), PublishedTable.Number(row[4]))),
    ];

    private static readonly Dictionary<string, Showpiece> ByKey = All
        .SelectMany(piece => piece.Designations.Concat(piece.Names).Select(name => (Key: Key(name), Piece: piece)))
        .ToDictionary(entry => entry.Key, entry => entry.Piece);

    /// <summary>Finds a showpiece by number or name.</summary>
    /// <param name="name">Any spelling: "M 31", "m31", "Messier 31", "NGC 0224", "Andromeda galaxy".</param>
    /// <returns>Null when it is not in the table.</returns>
    public static Showpiece? Find(string name) => ByKey.GetValueOrDefault(Key(name));

    // Letters and digits only, without leading zeros of the number, "Messier" as M.
    private static string Key(string name)
    {
        var plain = string.Concat(name.Where(char.IsLetterOrDigit)).ToUpperInvariant();
        plain = LeadingZeros().Replace(plain, "");
        return MessierNumber().Replace(plain, "M");
    }

    private static string[] Split(string list) => list.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    [GeneratedRegex("(?<=[A-Z])0+(?=[0-9])")]
    private static partial Regex LeadingZeros();

    [GeneratedRegex("^MESSIER(?=[0-9])")]
    private static partial Regex MessierNumber();
}
