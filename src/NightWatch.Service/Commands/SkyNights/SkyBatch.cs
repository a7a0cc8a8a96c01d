using System.Buffers;
using System.Text.Json;
using System.Threading.Channels;
using NightWatch.Service.Terminal;
using NightWatch.Sky.Ephemeris;
using NightWatch.Words.Documents;

namespace NightWatch.Service.Commands.SkyNights;

/// <summary>
/// A line in, a line out, in the same order. Whole blocks of lines are computed side by side and written in turn, so
/// memory holds a few blocks however long the file is.
/// </summary>
internal static class SkyBatch
{
    private const int BlockBytes = 128 * 1024;

    /// <returns>Exit code: bad input if any line was bad.</returns>
    public static async Task<int> RunAsync(Stream input, Stream output, CancellationToken cancellationToken)
    {
        var bad = false;
        var inFlight = Channel.CreateBounded<Task<Answers>>(2 * Environment.ProcessorCount);
        var reading = ReadAsync(input, inFlight.Writer, cancellationToken);
        await foreach (var block in inFlight.Reader.ReadAllAsync(cancellationToken))
        {
            var answers = await block;
            bad |= answers.AnyBad;
            await output.WriteAsync(answers.Utf8, cancellationToken);
        }

        await reading;
        await output.FlushAsync(cancellationToken);
        return bad ? Exit.BadInput : Exit.Ok;
    }

    private static async Task ReadAsync(Stream input, ChannelWriter<Task<Answers>> blocks, CancellationToken cancellationToken)
    {
        Exception? failure = null;
        try
        {
            // Ten years of dates, so that a file ordered by site does not compute them again for each.
            var ephemeris = new SkyEphemeris(4096);
            var rest = Array.Empty<byte>();
            var firstLine = 1;
            while (true)
            {
                var block = new byte[rest.Length + BlockBytes];
                rest.CopyTo(block, 0);
                var read = await input.ReadAtLeastAsync(
                    block.AsMemory(rest.Length), BlockBytes, throwOnEndOfStream: false, cancellationToken);
                var filled = rest.Length + read;
                var atEnd = read < BlockBytes;
                var whole = atEnd ? filled : block.AsSpan(0, filled).LastIndexOf((byte)'\n') + 1;
                rest = block[whole..filled];
                if (whole > 0)
                {
                    var lines = new Block(block.AsMemory(0, whole), firstLine);
                    firstLine += block.AsSpan(0, whole).Count((byte)'\n');
                    await blocks.WriteAsync(Task.Run(() => Compute(lines, ephemeris), cancellationToken), cancellationToken);
                }

                if (atEnd) return;
            }
        }
        catch (Exception thrown)
        {
            failure = thrown;
        }
        finally
        {
            blocks.Complete(failure);
        }
    }

    private static Answers Compute(Block block, SkyEphemeris ephemeris)
    {
        var buffer = new ArrayBufferWriter<byte>(8 * BlockBytes);
        using var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { SkipValidation = true });
        var anyBad = false;
        var rest = block.Utf8.Span;
        for (var number = block.FirstLine; rest.Length > 0; number++)
        {
            var end = rest.IndexOf((byte)'\n');
            var line = end < 0 ? rest : rest[..end];
            rest = end < 0 ? [] : rest[(end + 1)..];
            try
            {
                SkyJson.Write(json, SkyLine.Read(line).Compute(ephemeris));
            }
            catch (BadInputException refused)
            {
                anyBad = true;
                json.WriteStartObject();
                json.WriteString("error"u8, refused.Message);
                json.WriteNumber("line"u8, number);
                json.WriteEndObject();
            }

            json.Flush();
            json.Reset();
            buffer.Write("\n"u8);
        }

        return new Answers(buffer.WrittenMemory, anyBad);
    }

    private readonly record struct Block(ReadOnlyMemory<byte> Utf8, int FirstLine);

    private readonly record struct Answers(ReadOnlyMemory<byte> Utf8, bool AnyBad);
}
