using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using NightWatch.Planning.Sources;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Words.Documents;

/// <summary>The JSON documents on standard output.</summary>
public static class Document
{
    /// <summary>As sites and watches are written, but instants with milliseconds and intervals as {"start","end"}.</summary>
    public static JsonSerializerOptions Options { get; } = Make();

    /// <summary>How documents are written: for people too.</summary>
    public static JsonWriterOptions Indented { get; } = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes one document and a line end.</summary>
    public static void Write<T>(Stream output, T document)
    {
        JsonSerializer.Serialize(output, document, Options);
        output.WriteByte((byte)'\n');
        output.Flush();
    }

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions(WatchJson.Options) { WriteIndented = true };
        options.Converters.Insert(0, new InstantConverter());
        options.Converters.Insert(0, new FigureConverter());
        options.Converters.Insert(0, new IntervalConverter());
        options.Converters.Insert(0, new NightSkyConverter());
        options.Converters.Insert(0, new FormulaConverter());
        options.MakeReadOnly();
        return options;
    }

    /// <summary>Unknown is null, never a word and never zero; a billionth is enough and hides the noise of binary fractions.</summary>
    private sealed class FigureConverter : JsonConverter<double>
    {
        private const int Decimals = 9;

        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (double.IsFinite(value)) writer.WriteNumberValue(Math.Round(value, Decimals) + 0.0);
            else writer.WriteNullValue();
        }
    }

    private sealed class IntervalConverter : JsonConverter<Interval>
    {
        public override Interval Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException();

        public override void Write(Utf8JsonWriter writer, Interval value, JsonSerializerOptions options)
        {
            writer.WriteStartObject();
            writer.WritePropertyName("start");
            JsonSerializer.Serialize(writer, value.Start, options);
            writer.WritePropertyName("end");
            JsonSerializer.Serialize(writer, value.End, options);
            writer.WriteEndObject();
        }
    }

    /// <summary>A source is spelled out.</summary>
    private sealed class FormulaConverter : JsonConverter<Formula>
    {
        public override Formula Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException();

        public override void Write(Utf8JsonWriter writer, Formula value, JsonSerializerOptions options) =>
            writer.WriteStringValue(English.Instance.Of(value));
    }

    /// <summary>The sky has one shape wherever it is shown.</summary>
    private sealed class NightSkyConverter : JsonConverter<NightSky>
    {
        public override NightSky Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException();

        public override void Write(Utf8JsonWriter writer, NightSky value, JsonSerializerOptions options) => SkyJson.Write(writer, value);
    }
}
