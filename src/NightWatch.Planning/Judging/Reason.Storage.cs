using NodaTime;

namespace NightWatch.Planning.Judging;

// What is found of the cards, GB (10⁹ bytes) and frames.
public abstract partial record Reason
{
    /// <summary>What the frames need and the cards take; full before the last frame, or null.</summary>
    public sealed record CardRoom(
        Severity Severity, int Shots, double RawFileMb, double NeedGb, double RoomGb, int ShotsThatFit, Instant? Full)
        : Reason(Factor.Storage, Severity, null, NeedGb, RoomGb, Unit.Gigabytes, Sources.Formula.CardRoom);
}
