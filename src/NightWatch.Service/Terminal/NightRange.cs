using System.CommandLine;
using NightWatch.Watchkeeping.Records;
using NodaTime;

namespace NightWatch.Service.Terminal;

/// <summary>The options --from and --to of the commands that read the nights of the record.</summary>
/// <param name="isNeeded">Both must be given; else what is not given means all.</param>
internal sealed class NightRange(bool isNeeded = false)
{
    /// <summary>The first night.</summary>
    public Option<LocalDate?> From { get; } = Given.Date("--from", isNeeded ? "First night (required)." : "First night; default: all.");

    /// <summary>The last night.</summary>
    public Option<LocalDate?> To { get; } = Given.Date("--to", isNeeded ? "Last night (required)." : "Last night; default: all.");

    /// <summary>The nights given, both ends included.</summary>
    /// <exception cref="BadInputException">One that is needed is missing, or the last is before the first; the message names the
    /// option.</exception>
    public (LocalDate First, LocalDate Last) Of(ParseResult given)
    {
        var first = isNeeded ? given.Needed(From) : given.GetValue(From) ?? RecordReader.Earliest;
        var last = isNeeded ? given.Needed(To) : given.GetValue(To) ?? RecordReader.Latest;
        return first <= last
            ? (first, last)
            : throw new BadInputException($"--to: {last:R} is before --from, {first:R}; accepted: the same night or a later one.");
    }
}
