using NightWatch.Delivery.Mail;
using NightWatch.Store.Connections;

namespace NightWatch.Service.Measuring;

/// <summary>Tells the operator of every row that was stepped round, once.</summary>
internal sealed partial class UnreadableLog(ILogger<UnreadableLog> log)
{
    /// <summary>Listens from now on.</summary>
    public Database Follow(Database database)
    {
        database.Unreadable.Found += row => LogUnreadable(Redaction.Of(row.Name), Redaction.Of(row.Why));
        return database;
    }

    [LoggerMessage(
        121,
        LogLevel.Error,
        "The stored {Row} cannot be read and is left out, all others go on; 'nightwatch check' lists such rows: {Why}")]
    private partial void LogUnreadable(string row, string why);
}
