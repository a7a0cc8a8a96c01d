using NightWatch.Planning.Chance;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>What a plan is made from. A pure function of these.</summary>
public sealed record NightInputs
{
    /// <summary>The standing order.</summary>
    public required Watch Watch { get; init; }

    /// <summary>Local date of the evening.</summary>
    public required LocalDate Night { get; init; }

    /// <summary>The clock reading of the pass.</summary>
    public required Instant Now { get; init; }

    /// <summary>What is known about the weather at the site.</summary>
    public PlaceWeather Weather { get; init; } = PlaceWeather.Unknown;

    /// <summary>The site's moonless sky with its towns, worth making once a site and keeping; null: made for this plan.</summary>
    public SiteSkyGlow? Glow { get; init; }

    /// <summary>The chance by feed and lead.</summary>
    public ChanceBook Chances { get; init; } = ChanceBook.Shipped;

    /// <summary>The class this reader was last told of the night; null: none.</summary>
    public VerdictClass? LastTold { get; init; }

    /// <summary>The weather is the hours that came: no chance is left, the night was usable or it was not.</summary>
    public bool HasCome { get; init; }

    /// <summary>Rain of the last 72 hours.</summary>
    public RainBefore RainBefore { get; init; } = RainBefore.Unknown;
}
