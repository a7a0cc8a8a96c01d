using NightWatch.Planning.Sources;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Camera;

/// <summary>Room on the cards for the sequence.</summary>
/// <param name="NeedGb">Files of the sequence, GB (10⁹ bytes).</param>
/// <param name="RoomGb">What the cards really take, GB.</param>
/// <param name="ShotsThatFit">Frames that fit.</param>
/// <param name="Full">Start of the first frame that does not fit: change the card before it; null: all fit.</param>
public sealed record StoragePlan(double NeedGb, double RoomGb, int ShotsThatFit, Instant? Full)
{
    /// <summary>
    /// Share of a card's label that takes files: file systems and makers' counting leave about this (engineering choice).
    /// </summary>
    public const double UsableShare = 0.93;

    /// <summary>Where the figures come from.</summary>
    public Formula Source { get; } = Formula.CardRoom;

    /// <summary>Works out a sequence.</summary>
    public static StoragePlan Of(Sequence sequence, Kit kit)
    {
        ArgumentNullException.ThrowIfNull(sequence);
        ArgumentNullException.ThrowIfNull(kit);
        var room = kit.CardGb * UsableShare;
        var fits = CardSpace.ShotsThatFit(room, kit.RawFileMb);
        return new StoragePlan(
            CardSpace.NeedGb(sequence.Shots, kit.RawFileMb),
            room,
            fits,
            fits < sequence.Shots ? sequence.Span.Start + Duration.FromSeconds(fits * sequence.IntervalS) : null);
    }
}
