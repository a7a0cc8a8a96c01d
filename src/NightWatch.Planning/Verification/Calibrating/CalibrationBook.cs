using System.Collections.Frozen;

namespace NightWatch.Planning.Verification.Calibrating;

/// <summary>What is learnt of every feed and lead. Immutable: a look takes the book as it stands.</summary>
public sealed class CalibrationBook
{
    private readonly FrozenDictionary<CalibrationKey, Calibration> pages;

    /// <param name="calibrations">At most one a feed and lead.</param>
    /// <exception cref="ArgumentException">Two of one feed and lead.</exception>
    public CalibrationBook(IEnumerable<Calibration> calibrations)
    {
        All = [.. calibrations.OrderBy(one => one.For.FeedId, StringComparer.Ordinal).ThenBy(one => one.For.LeadNights)];
        if (All.GroupBy(one => one.For).FirstOrDefault(key => key.Count() > 1) is { } twice)
            throw new ArgumentException($"Accepted: one calibration a feed and lead; {twice.Key} has several.", nameof(calibrations));
        pages = All.ToFrozenDictionary(one => one.For);
    }

    /// <summary>Nothing is learnt: every probability stays as it is computed.</summary>
    public static CalibrationBook Empty { get; } = new([]);

    /// <summary>By feed, then lead.</summary>
    public IReadOnlyList<Calibration> All { get; }

    /// <summary>The calibration of a feed and lead; null: none.</summary>
    public Calibration? Of(CalibrationKey key) => pages.GetValueOrDefault(key);

    /// <summary>The probability to tell. Unchanged, but for the version, where the calibration is off.</summary>
    public Probability Apply(CalibrationKey key, Probability computed)
    {
        if (Of(key) is not { Version: > 0 } known) return computed;
        if (known.Map is CalibrationMap.Off) return computed with { CalibrationVersion = known.Version };
        return computed with
        {
            Value = known.Apply(computed.Value),
            Uncalibrated = computed.Value,
            CalibrationVersion = known.Version,
            CalibratedBy = known.Proof?.Pairs ?? 0,
        };
    }
}
