using NightWatch.Store.Connections;

namespace NightWatch.Store.Tests.Connections;

public sealed class DatabaseSettingTests
{
    [Theory]
    [InlineData("/var/lib/nightwatch/nightwatch.db", DatabaseKind.Sqlite, "/var/lib/nightwatch/nightwatch.db")]
    [InlineData("Data Source=/var/lib/nightwatch/nightwatch.db", DatabaseKind.Sqlite, "/var/lib/nightwatch/nightwatch.db")]
    [InlineData(
        "Host=db.example.org;Database=nightwatch;Username=nw;Password=s3cret", DatabaseKind.PostgreSql, "db.example.org:5432/nightwatch")]
    public void A_setting_names_its_database_without_secrets(string setting, DatabaseKind kind, string description)
    {
        var parsed = DatabaseSetting.Parse(setting);

        Assert.Equal((kind, description), (parsed.Kind, parsed.Description));
    }

    [Theory]
    [InlineData("")]
    [InlineData(":memory:")]
    [InlineData("Data Source=:memory:")]
    [InlineData("Password=s3cret")]
    [InlineData("Host=db;Colour=red;Password=s3cret")]
    [InlineData("Data Source=a.db;Host=db")]
    public void Anything_else_is_refused_with_what_is_accepted_and_without_secrets(string setting)
    {
        var fault = Assert.Throws<FormatException>(() => DatabaseSetting.Parse(setting));

        Assert.Contains("accepted: ", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("s3cret", fault.Message, StringComparison.Ordinal);
    }
}
