using NightWatch.Service.Settings;
using NightWatch.Store.Chances;
using NightWatch.Store.Outcomes;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Records;
using NightWatch.Weather;

namespace NightWatch.Service.Hosting;

/// <summary>The parts that keep the service's own score.</summary>
internal static class RecordServices
{
    public static IServiceCollection AddRecord(this IServiceCollection services, AllSettings settings)
    {
        services.AddSingleton(settings.Observations);
        services.AddSingleton<OutcomeStore>().AddSingleton<LearntChanceStore>().AddSingleton<ChancesInUse>().AddSingleton<RecordReader>();
        if (settings.Observations.AerodromeKm > 0) services.AddAerodromes(settings.Observations.ToAerodromes(settings.Feeds.Contact));
        return services
            .AddSingleton<NearestAerodrome>()
            .AddSingleton<OutcomeRecorder>()
            .AddSingleton<ChanceLearner>()
            .AddSingleton<RecordKeeping>();
    }
}
