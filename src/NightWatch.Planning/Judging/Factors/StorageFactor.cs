namespace NightWatch.Planning.Judging.Factors;

/// <summary>Room on the cards. A card more in the bag cures it, so it is a caution only where they would not hold a usable run.</summary>
internal sealed class StorageFactor : FactorRule
{
    public override Factor Factor => Factor.Storage;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.Sequence is not { } sequence || plan.Storage is not { } storage) return null;
        var need = $"{sequence.Shots} frames of {Said.Number(night.Watch.Kit.RawFileMb)} MB need {Said.OneDecimal(storage.NeedGb)} GB";
        var minutes = storage.ShotsThatFit * sequence.IntervalS / 60;
        return new Reason(
            Factor, storage.Full is null || minutes >= night.Limits.UsableRunMin ? Severity.Ok : Severity.Caution, null, storage.NeedGb, storage.RoomGb, Unit.Gigabytes,
            storage.Full is { } full
                ? $"{need}, but the cards hold only {Said.Number(storage.RoomGb)} GB: they are full at {Said.Clock(full, night.Zone)}, after {storage.ShotsThatFit} frames."
                : $"{need}; the cards hold {Said.Number(storage.RoomGb)} GB.",
            storage.Full is null ? null : $"Another card of at least {Math.Ceiling(storage.NeedGb - storage.RoomGb):0} GB, or a longer interval.", storage.Source);
    }
}
