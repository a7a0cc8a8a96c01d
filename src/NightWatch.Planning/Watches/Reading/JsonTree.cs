using System.Text.Json;

namespace NightWatch.Planning.Watches.Reading;

/// <summary>A JSON value that knows its line, so that a fault can name it.</summary>
/// <param name="Kind">The first token of the value.</param>
/// <param name="Line">From 1.</param>
/// <param name="Raw">The value's own bytes; empty for objects and arrays.</param>
internal sealed record JsonTree(JsonTokenType Kind, int Line, ReadOnlyMemory<byte> Raw)
{
    /// <summary>An object's members in order, doubles included.</summary>
    public List<(string Name, int Line, JsonTree Value)> Members { get; } = [];

    /// <summary>An array's items.</summary>
    public List<JsonTree> Items { get; } = [];

    /// <summary>Parses a text; comments and trailing commas are allowed.</summary>
    /// <exception cref="JsonException">It is not JSON; the line number is in the exception, from 0.</exception>
    public static JsonTree Parse(byte[] utf8)
    {
        var reader = new Utf8JsonReader(
            utf8,
            new JsonReaderOptions
            {
                AllowTrailingCommas = true,
                CommentHandling = JsonCommentHandling.Skip,
                MaxDepth = 32,
            });
        var lines = new LineCounter(utf8);
        reader.Read();
        var root = Value(ref reader, utf8, lines);
        reader.Read();
        return root;
    }

    private static JsonTree Value(ref Utf8JsonReader reader, byte[] utf8, LineCounter lines)
    {
        var start = (int)reader.TokenStartIndex;
        var kind = reader.TokenType;
        var scalar = kind is not (JsonTokenType.StartObject or JsonTokenType.StartArray);
        var node = new JsonTree(kind, lines.At(start), scalar ? utf8.AsMemory(start, (int)reader.BytesConsumed - start) : default);
        if (kind == JsonTokenType.StartObject)
        {
            while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
            {
                var name = reader.GetString()!;
                var line = lines.At((int)reader.TokenStartIndex);
                reader.Read();
                node.Members.Add((name, line, Value(ref reader, utf8, lines)));
            }
        }
        else if (kind == JsonTokenType.StartArray)
        {
            while (reader.Read() && reader.TokenType != JsonTokenType.EndArray) node.Items.Add(Value(ref reader, utf8, lines));
        }

        return node;
    }

    /// <summary>Counts lines while the reader moves forward.</summary>
    private sealed class LineCounter(byte[] utf8)
    {
        private int position;
        private int line = 1;

        public int At(int index)
        {
            for (; position < index; position++)
            {
                if (utf8[position] == (byte)'\n') line++;
            }

            return line;
        }
    }
}
