using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Planning.Reasons;

/// <summary>The Moon comes up or goes down.</summary>
/// <param name="At">The instant of it.</param>
/// <param name="Rises">It rises; else it sets.</param>
public readonly record struct MoonTurn(Instant At, bool Rises)
{
    /// <summary>Of one night, in order.</summary>
    public static IReadOnlyList<MoonTurn> Of(MoonEvents moon)
    {
        ArgumentNullException.ThrowIfNull(moon);
        var sets = moon.Sets.Select(at => new MoonTurn(at, Rises: false));
        return [.. sets.Concat(moon.Rises.Select(at => new MoonTurn(at, Rises: true))).OrderBy(turn => turn.At)];
    }
}
