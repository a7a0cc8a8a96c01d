namespace NightWatch.Weather.Feeds;

/// <summary>What an installation is for. It must be said, since some feeds' free hosts are for private use only.</summary>
public enum Usage
{
    /// <summary>Private or non-profit, without advertising or subscriptions.</summary>
    Private,

    /// <summary>Anything that earns or helps to earn money.</summary>
    Commercial,
}
