using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Camera;

/// <summary>Room on the cards. What that is worth, and whether it must be mended first, is decided over the whole plan.</summary>
internal static class StorageJudge
{
    /// <summary>Its finding.</summary>
    public static Reason Of(StoragePlan storage, Sequence sequence, Kit kit)
    {
        var severity = storage.Full is null ? Severity.Ok : Severity.Caution;
        return new CardRoom(severity, sequence.Shots, kit.RawFileMb, storage.NeedGb, storage.RoomGb, storage.ShotsThatFit, storage.Full)
        {
            Mend = storage.Full is null ? null : new Mend.Card(Math.Ceiling(storage.NeedGb - storage.RoomGb)),
        };
    }
}
