using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;

namespace NightWatch.Service.Commands.Checks;

/// <summary>How a finding is to be taken.</summary>
internal enum Level
{
    /// <summary>Nothing is wrong.</summary>
    Ok,

    /// <summary>The service runs, but somebody should look at it.</summary>
    Warning,

    /// <summary>The service does not do its job like this.</summary>
    Fault,
}

/// <summary>One line of the check.</summary>
/// <param name="About">What was looked at.</param>
/// <param name="Level">How it is to be taken.</param>
/// <param name="Text">What is so, or what is wrong and what to do.</param>
internal sealed record Finding(string About, Level Level, string Text)
{
    public static Finding Ok(string about, string text) => new(about, Level.Ok, text);

    public static Finding Warning(string about, string text) => new(about, Level.Warning, text);

    public static Finding Fault(string about, string text) => new(about, Level.Fault, text);

    public override string ToString() => $"{Level.ToString().ToLowerInvariant(),-7} {About}: {Text}";
}

/// <summary>What the checks share.</summary>
/// <param name="Settings">As read; their faults are told by the check of the configuration.</param>
/// <param name="Shell">The world around.</param>
/// <param name="DnsServer">The DNS server that is asked; null: the system's.</param>
internal sealed record CheckBench(AllSettings Settings, Shell Shell, System.Net.IPEndPoint? DnsServer)
{
    /// <summary>What other machines' clocks said while they were asked for something else.</summary>
    public ClockWitnesses Clocks { get; } = new(Shell.Clock);
}
