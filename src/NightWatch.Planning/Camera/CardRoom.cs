using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Planning.Camera;

/// <summary>
/// What is found of the cards, in GB (10⁹ bytes) and frames: what the frames need and the cards take; full before the last frame, or null.
/// </summary>
public sealed record CardRoom(
    Severity Severity, int Shots, double RawFileMb, double NeedGb, double RoomGb, int ShotsThatFit, Instant? Full)
    : Reason(Factor.Storage, Severity, null, NeedGb, RoomGb, Unit.Gigabytes, Sources.Formula.CardRoom);
