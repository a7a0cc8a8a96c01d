using NightWatch.Planning.Power;

namespace NightWatch.Planning.Verdicts.Factors;

/// <summary>Room on the cards. A card more in the bag cures it, so it is a caution only where they would not hold a usable run.</summary>
internal sealed class StorageFactor : FactorRule
{
    /// <summary>Share of a card's label that takes files: file systems and makers' counting leave about this (engineering choice).</summary>
    private const double UsableShare = 0.93;

    public override Factor Factor => Factor.Storage;

    public override Reason? Judge(NightEvidence night, ShootingPlan plan)
    {
        if (plan.Sequence is not { } sequence) return null;
        var room = night.Watch.Kit.CardGb * UsableShare;
        var fits = sequence.StorageGb <= room;
        var need = $"{sequence.Shots} frames of {Said.Number(night.Watch.Kit.RawFileMb)} MB need {Said.OneDecimal(sequence.StorageGb)} GB";
        var minutes = CardSpace.ShotsThatFit(room, night.Watch.Kit.RawFileMb) * sequence.IntervalS / 60;
        return new Reason(
            Factor, fits || minutes >= night.Limits.UsableRunMin ? Severity.Ok : Severity.Caution, null, sequence.StorageGb, room, Unit.Gigabytes,
            fits ? $"{need}; the cards hold {Said.Number(room)} GB." : $"{need}, but the cards hold only {Said.Number(room)} GB, {Said.Number(minutes)} min of frames.",
            fits ? null : $"Another card of at least {Math.Ceiling(sequence.StorageGb - room):0} GB, or a longer interval.");
    }
}
