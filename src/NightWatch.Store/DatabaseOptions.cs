using NodaTime;

namespace NightWatch.Store;

/// <summary>Section "Database".</summary>
public sealed class DatabaseOptions
{
    /// <summary>Its name in the configuration.</summary>
    public const string Section = "Database";

    /// <summary>A file name for SQLite, "Host=...;Database=...;Username=..." for PostgreSQL.</summary>
    public string Connection { get; set; } = "nightwatch.db";

    /// <summary>Forecast runs kept of each feed and place.</summary>
    public int KeepForecastRuns { get; set; } = 12;

    /// <summary>
    /// Days that every forecast is kept, so that what was told can be replayed; 0: only the forecast runs that the service needs.
    /// </summary>
    public int KeepReplayDays { get; set; }

    /// <summary>Days that letters are kept after they are closed.</summary>
    public int KeepLettersDays { get; set; } = 30;

    /// <summary>Days that evaluations and what was told are kept.</summary>
    public int KeepVerdictsDays { get; set; } = 400;

    /// <summary>Days that outcomes, what the nights were like, are kept.</summary>
    public int KeepOutcomesDays { get; set; } = 2000;

    /// <summary>How long things are kept, by these settings.</summary>
    public RetentionRule Retention() => new()
    {
        ForecastRuns = KeepForecastRuns,
        Replay = Duration.FromDays(KeepReplayDays),
        LetterTexts = Duration.FromDays(KeepLettersDays),
        Verdicts = Duration.FromDays(KeepVerdictsDays),
        Outcomes = Duration.FromDays(KeepOutcomesDays),
    };

    /// <summary>What is wrong, one sentence a fault, each naming its key; empty: nothing.</summary>
    public IEnumerable<string> Faults()
    {
        if (string.IsNullOrWhiteSpace(Connection))
            yield return "Database:Connection is empty; accepted: a file name, or Host=...;Database=...;Username=... for PostgreSQL.";
        if (KeepForecastRuns is < 2 or > 500) yield return $"Database:KeepForecastRuns is {KeepForecastRuns}; accepted: 2 to 500.";
        if (KeepReplayDays is < 0 or > 3650) yield return $"Database:KeepReplayDays is {KeepReplayDays}; accepted: 0 (off) to 3650.";
        if (KeepLettersDays is < 1 or > 3650) yield return $"Database:KeepLettersDays is {KeepLettersDays}; accepted: 1 to 3650.";
        if (KeepVerdictsDays is < 30 or > 3650) yield return $"Database:KeepVerdictsDays is {KeepVerdictsDays}; accepted: 30 to 3650.";
        if (KeepOutcomesDays < KeepVerdictsDays || KeepOutcomesDays > 7300)
            yield return $"Database:KeepOutcomesDays is {KeepOutcomesDays}; accepted: KeepVerdictsDays ({KeepVerdictsDays}) to 7300.";
    }
}
