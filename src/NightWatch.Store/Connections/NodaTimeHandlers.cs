using System.Data;
using System.Globalization;
using Dapper;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Store.Connections;

/// <summary>Teaches Dapper the two NodaTime types that the tables hold.</summary>
internal static class NodaTimeHandlers
{
    /// <summary>Dapper keeps its handlers for the whole process; doing it twice changes nothing.</summary>
    public static void Register()
    {
        SqlMapper.AddTypeHandler(new InstantHandler());
        SqlMapper.AddTypeHandler(new LocalDateHandler());
        DefaultTypeMap.MatchNamesWithUnderscores = true;
    }

    /// <summary>Unix milliseconds.</summary>
    private sealed class InstantHandler : SqlMapper.TypeHandler<Instant>
    {
        public override Instant Parse(object value) =>
            Instant.FromUnixTimeMilliseconds(Convert.ToInt64(value, CultureInfo.InvariantCulture));

        public override void SetValue(IDbDataParameter parameter, Instant value)
        {
            parameter.DbType = DbType.Int64;
            parameter.Value = value.ToUnixTimeMilliseconds();
        }
    }

    /// <summary>ISO 8601, "2027-03-14": sorts as it counts.</summary>
    private sealed class LocalDateHandler : SqlMapper.TypeHandler<LocalDate>
    {
        public override LocalDate Parse(object value) => LocalDatePattern.Iso.Parse((string)value).Value;

        public override void SetValue(IDbDataParameter parameter, LocalDate value)
        {
            parameter.DbType = DbType.String;
            parameter.Value = LocalDatePattern.Iso.Format(value);
        }
    }
}
