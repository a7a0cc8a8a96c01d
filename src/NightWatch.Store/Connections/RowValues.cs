using System.Globalization;
using System.Text;
using Dapper;

namespace NightWatch.Store.Connections;

/// <summary>Many rows for one statement: a hundred statements would be a hundred trips to a server.</summary>
internal sealed class RowValues
{
    /// <summary>
    /// Most rows of one statement. SQLite searches its list of parameters for each one, so that the time grows with the square of their
    /// number.
    /// </summary>
    public const int MostRows = 50;

    private RowValues(string text, DynamicParameters values) => (Text, Values) = (text, values);

    /// <summary>"(@v0_0, @v0_1), (@v1_0, @v1_1)".</summary>
    public string Text { get; }

    /// <summary>Their values.</summary>
    public DynamicParameters Values { get; }

    /// <summary>Writes rows out.</summary>
    public static RowValues Of<T>(IReadOnlyList<T> rows, Func<T, object[]> columns)
    {
        var (text, values) = (new StringBuilder(), new DynamicParameters());
        for (var i = 0; i < rows.Count; i++)
        {
            text.Append(i == 0 ? "(" : ", (");
            var row = columns(rows[i]);
            for (var j = 0; j < row.Length; j++)
            {
                var name = string.Create(CultureInfo.InvariantCulture, $"v{i}_{j}");
                text.Append(j == 0 ? "@" : ", @").Append(name);
                values.Add(name, row[j]);
            }

            text.Append(')');
        }

        return new RowValues(text.ToString(), values);
    }

    /// <summary>One more value, for the rest of the statement.</summary>
    public RowValues Add(string name, object value)
    {
        Values.Add(name, value);
        return this;
    }
}
