using System.Buffers.Binary;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace NightWatch.Service.Tests.Commands.Checks;

/// <summary>A name server on loopback that knows some TXT records and nothing else (RFC 1035, 4.1).</summary>
internal sealed class DnsZone : IDisposable
{
    private const int HeaderBytes = 12;
    private const int NameError = 3;
    private const int TxtType = 16;

    private readonly UdpClient socket = new(new IPEndPoint(IPAddress.Loopback, 0));
    private readonly Dictionary<string, string[]> texts;
    private readonly Task serving;

    public DnsZone(params (string Name, string[] Texts)[] records)
    {
        texts = records.ToDictionary(record => record.Name, record => record.Texts, StringComparer.OrdinalIgnoreCase);
        serving = ServeAsync();
    }

    public IPEndPoint Address => (IPEndPoint)socket.Client.LocalEndPoint!;

    public void Dispose()
    {
        socket.Dispose();
        serving.Wait(TimeSpan.FromSeconds(5), CancellationToken.None);
    }

    private async Task ServeAsync()
    {
        try
        {
            while (true)
            {
                var asked = await socket.ReceiveAsync();
                await socket.SendAsync(Answer(asked.Buffer), asked.RemoteEndPoint);
            }
        }
        catch (Exception closed) when (closed is ObjectDisposedException or SocketException)
        {
        }
    }

    private byte[] Answer(byte[] question)
    {
        var (labels, at) = (new List<string>(), HeaderBytes);
        while (question[at] != 0)
        {
            labels.Add(Encoding.ASCII.GetString(question, at + 1, question[at]));
            at += question[at] + 1;
        }

        var end = at + 5; // the root label, type, class
        var known = texts.TryGetValue(string.Join('.', labels), out var found);
        using var answer = new MemoryStream();
        answer.Write(question, 0, 2);
        Write(answer, (ushort)(0x8580 | (known ? 0 : NameError))); // an authoritative response to a recursive question
        Write(answer, 1);
        Write(answer, (ushort)(found?.Length ?? 0));
        Write(answer, 0);
        Write(answer, 0);
        answer.Write(question, HeaderBytes, end - HeaderBytes);
        foreach (var text in found ?? [])
        {
            Write(answer, 0xC000 | HeaderBytes); // the name of the question
            Write(answer, TxtType);
            Write(answer, 1);
            Write(answer, 0);
            Write(answer, 60);
            // A longer text comes in strings of at most 255 bytes.
            var strings = text.Chunk(255).ToList();
            Write(answer, (ushort)(text.Length + strings.Count));
            foreach (var part in strings)
            {
                answer.WriteByte((byte)part.Length);
                answer.Write(Encoding.ASCII.GetBytes(part));
            }
        }

        return answer.ToArray();
    }

    private static void Write(MemoryStream answer, ushort value)
    {
        Span<byte> bytes = stackalloc byte[2];
        BinaryPrimitives.WriteUInt16BigEndian(bytes, value);
        answer.Write(bytes);
    }
}
