namespace NightWatch.Planning.Judging.Factors;

/// <summary>Room on the cards. A card more in the bag cures it, so it is a caution only where they would not hold a usable run.</summary>
internal sealed class StorageFactor : FactorRule
{
    public override Factor Factor => Factor.Storage;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.Sequence is not { } sequence || plan.Storage is not { } storage) return null;
        var minutes = storage.ShotsThatFit * sequence.IntervalS / 60;
        var severity = storage.Full is null || minutes >= night.Limits.UsableRunMin ? Severity.Ok : Severity.Caution;
        return new Reason.CardRoom(severity, sequence.Shots, night.Watch.Kit.RawFileMb, storage.NeedGb, storage.RoomGb, storage.ShotsThatFit, storage.Full)
        {
            Mend = storage.Full is null ? null : new Mend.Card(Math.Ceiling(storage.NeedGb - storage.RoomGb)),
        };
    }
}
