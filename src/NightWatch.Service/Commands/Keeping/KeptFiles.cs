using NightWatch.Planning.Watches.Reading;
using NightWatch.Service.Terminal;

namespace NightWatch.Service.Commands.Keeping;

/// <summary>From a reading to its value, or to the one line that refuses it.</summary>
internal static class KeptFiles
{
    /// <exception cref="BadInputException">Every fault, in one line.</exception>
    public static T ValueOf<T>(FileReading<T> reading)
        where T : class =>
        reading.Value
        ?? throw new BadInputException(string.Join("; ", reading.Faults.Select(fault => fault.ToString().TrimEnd('.'))) + ".");
}
