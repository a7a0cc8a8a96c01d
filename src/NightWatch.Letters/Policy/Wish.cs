using NightWatch.Planning.Nights;
using NodaTime;

namespace NightWatch.Letters.Policy;

/// <summary>What the subscriber asked for themselves, as the cause of a letter. Closed.</summary>
public abstract record Wish
{
    private Wish()
    {
    }

    /// <summary>The night gave way to another one.</summary>
    /// <param name="To">That one, as planned now.</param>
    public sealed record SwitchedTo(NightPlan To) : Wish;

    /// <summary>The night was chosen in place of another one.</summary>
    /// <param name="From">That one, as planned now.</param>
    public sealed record SwitchedFrom(NightPlan From) : Wish;

    /// <summary>The watch rests.</summary>
    /// <param name="Until">The first local date on which it looks again.</param>
    public sealed record Paused(LocalDate Until) : Wish;
}
