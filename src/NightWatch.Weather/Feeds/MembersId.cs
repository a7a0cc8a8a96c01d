namespace NightWatch.Weather.Feeds;

/// <summary>Under which id an ensemble's answers and holds are kept: a feed may give both a forecast and members under its own.</summary>
public static class MembersId
{
    private const string Suffix = "/members";

    /// <summary>Of a feed's members.</summary>
    public static string Of(string feedId) => feedId + Suffix;

    /// <summary>The feed behind an id, whether it is that of members or of forecasts.</summary>
    public static string FeedOf(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        return IsOne(id) ? id[..^Suffix.Length] : id;
    }

    /// <summary>Members are kept under it.</summary>
    public static bool IsOne(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        return id.EndsWith(Suffix, StringComparison.Ordinal);
    }
}
