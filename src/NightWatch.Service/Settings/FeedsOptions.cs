namespace NightWatch.Service.Settings;

/// <summary>Section "Feeds".</summary>
public sealed class FeedsOptions
{
    public const string Section = "Feeds";

    /// <summary>MET Norway.</summary>
    public const string MetNorwayId = "met-norway";

    /// <summary>Invented weather, for trying things out.</summary>
    public const string FakeId = "fake";

    /// <summary>Feeds in the order of trust, comma-separated: the first that answers decides, the next is the second opinion.</summary>
    public string Order { get; set; } = MetNorwayId;

    /// <summary>A stored answer older than this is not used any more; the weather is then unknown.</summary>
    public int MostAgeHours { get; set; } = 18;

    public MetNorwaySection MetNorway { get; set; } = new();

    public FakeSection Fake { get; set; } = new();

    /// <summary>The ids in <see cref="Order"/>.</summary>
    public IReadOnlyList<string> Ids => Order.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>What is wrong, one sentence a fault, each naming its key; empty: nothing.</summary>
    public IEnumerable<string> Faults()
    {
        string[] known = [MetNorwayId, FakeId];
        if (Ids.Count == 0) yield return $"Feeds:Order is empty; accepted: one or more of {string.Join(", ", known)}.";
        foreach (var id in Ids.Where(id => !known.Contains(id))) yield return $"Feeds:Order names '{id}'; accepted: {string.Join(", ", known)}.";
        if (Ids.Distinct().Count() != Ids.Count) yield return "Feeds:Order names a feed twice; accepted: each once.";
        if (MostAgeHours is < 1 or > 72) yield return $"Feeds:MostAgeHours is {MostAgeHours}; accepted: 1 to 72.";
        if (!Ids.Contains(MetNorwayId)) yield break;
        if (string.IsNullOrWhiteSpace(MetNorway.Contact))
            yield return "Feeds:MetNorway:Contact is empty; accepted: your mail address or web page, which the feed's terms of service demand.";
        if (!Uri.TryCreate(MetNorway.BaseUrl, UriKind.Absolute, out var uri) || uri.Scheme is not ("https" or "http"))
            yield return $"Feeds:MetNorway:BaseUrl is '{MetNorway.BaseUrl}'; accepted: an absolute http or https address.";
        if (MetNorway.TimeoutSeconds is < 1 or > 120) yield return $"Feeds:MetNorway:TimeoutSeconds is {MetNorway.TimeoutSeconds}; accepted: 1 to 120.";
    }
}

/// <summary>Section "Feeds:MetNorway".</summary>
public sealed class MetNorwaySection
{
    /// <summary>Mail address or web page of whoever runs this installation.</summary>
    public string Contact { get; set; } = "";

    public string BaseUrl { get; set; } = "https://api.met.no/";

    /// <summary>Seconds for one try.</summary>
    public int TimeoutSeconds { get; set; } = 20;
}

/// <summary>Section "Feeds:Fake".</summary>
public sealed class FakeSection
{
    /// <summary>Another seed, other weather.</summary>
    public long Seed { get; set; } = 1;
}
