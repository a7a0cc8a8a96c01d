using NightWatch.Store.Calibrations;
using NightWatch.Store.Outcomes;

namespace NightWatch.Service.Records;

/// <summary>The parts that keep the service's own score.</summary>
internal static class RecordParts
{
    public static IServiceCollection AddRecord(this IServiceCollection services) =>
        services.AddSingleton<OutcomeStore>().AddSingleton<CalibrationStore>().AddSingleton<CalibrationDesk>().AddSingleton<RecordReader>();
}
