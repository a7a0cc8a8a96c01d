using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Camera;

/// <summary>Room on the cards. A card more in the bag cures it, so it is a caution only where they would not hold a usable run.</summary>
internal static class StorageJudge
{
    /// <summary>Its finding.</summary>
    public static Reason Of(StoragePlan storage, Sequence sequence, Kit kit, Limits limits)
    {
        var minutes = storage.ShotsThatFit * sequence.IntervalS / 60;
        var severity = storage.Full is null || minutes >= limits.UsableRunMin ? Severity.Ok : Severity.Caution;
        return new CardRoom(severity, sequence.Shots, kit.RawFileMb, storage.NeedGb, storage.RoomGb, storage.ShotsThatFit, storage.Full)
        {
            Mend = storage.Full is null ? null : new Mend.Card(Math.Ceiling(storage.NeedGb - storage.RoomGb)),
        };
    }
}
