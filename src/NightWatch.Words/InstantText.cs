using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Words;

/// <summary>Instants as every document of ours shows them: UTC, ISO 8601, exactly milliseconds, rounded to the nearest.</summary>
public static class InstantText
{
    /// <summary>Bytes of one instant: 2026-08-13T04:16:09.123Z.</summary>
    public const int Length = 24;

    private static readonly InstantPattern MinutePattern = InstantPattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    /// <summary>Writes <see cref="Length"/> ASCII characters.</summary>
    public static void Format(Instant at, Span<byte> utf8)
    {
        // By hand, as a batch writes thirty of these a line and pattern formatting would cost more than the sky behind them.
        var utc = Rounded(at).ToDateTimeUtc();
        Digits(utf8[..4], utc.Year);
        utf8[4] = (byte)'-';
        Digits(utf8.Slice(5, 2), utc.Month);
        utf8[7] = (byte)'-';
        Digits(utf8.Slice(8, 2), utc.Day);
        utf8[10] = (byte)'T';
        Digits(utf8.Slice(11, 2), utc.Hour);
        utf8[13] = (byte)':';
        Digits(utf8.Slice(14, 2), utc.Minute);
        utf8[16] = (byte)':';
        Digits(utf8.Slice(17, 2), utc.Second);
        utf8[19] = (byte)'.';
        Digits(utf8.Slice(20, 3), utc.Millisecond);
        utf8[23] = (byte)'Z';
    }

    /// <summary>The same as text.</summary>
    public static string Of(Instant at)
    {
        Span<byte> utf8 = stackalloc byte[Length];
        Format(at, utf8);
        return System.Text.Encoding.ASCII.GetString(utf8);
    }

    /// <summary>"2026-08-13 04:16" in UTC, for whoever runs the service.</summary>
    public static string Minute(Instant at) => MinutePattern.Format(at);

    private static Instant Rounded(Instant at) =>
        Instant.FromUnixTimeTicks(
            (at.ToUnixTimeTicks() + (NodaConstants.TicksPerMillisecond / 2))
                / NodaConstants.TicksPerMillisecond
                * NodaConstants.TicksPerMillisecond);

    private static void Digits(Span<byte> utf8, int value)
    {
        for (var i = utf8.Length - 1; i >= 0; i--)
        {
            utf8[i] = (byte)('0' + (value % 10));
            value /= 10;
        }
    }
}

/// <summary>Instants in serialized documents.</summary>
public sealed class InstantConverter : JsonConverter<Instant>
{
    /// <inheritdoc/>
    public override Instant Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        InstantPattern.ExtendedIso.Parse(reader.GetString()!).GetValueOrThrow();

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Instant value, JsonSerializerOptions options)
    {
        Span<byte> utf8 = stackalloc byte[InstantText.Length];
        InstantText.Format(value, utf8);
        writer.WriteStringValue(utf8);
    }
}
