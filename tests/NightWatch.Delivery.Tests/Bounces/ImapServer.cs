using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;

namespace NightWatch.Delivery.Tests.Bounces;

/// <summary>A mailbox on loopback, as much of IMAP4rev1 (RFC 3501) as reading reports takes. Mails are served byte for byte.</summary>
internal sealed partial class ImapServer : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly IReadOnlyList<byte[]> mails;
    private readonly bool keepsKeywords;
    private readonly Task serving;

    public ImapServer(IReadOnlyList<string> mails, bool keepsKeywords = true)
    {
        this.mails = [.. mails.Select(mail => Encoding.UTF8.GetBytes(mail.ReplaceLineEndings("\r\n")))];
        this.keepsKeywords = keepsKeywords;
        listener.Start();
        Port = ((IPEndPoint)listener.LocalEndpoint).Port;
        serving = ServeAsync();
    }

    public int Port { get; }

    /// <summary>Uids that bear the reader's keyword.</summary>
    public HashSet<int> Marked { get; } = [];

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        listener.Stop();
        await serving;
        stop.Dispose();
    }

    private async Task ServeAsync()
    {
        try
        {
            while (true)
            {
                using var client = await listener.AcceptTcpClientAsync(stop.Token);
                await TalkAsync(client.GetStream());
            }
        }
        catch (Exception over) when (over is OperationCanceledException or SocketException or IOException)
        {
            // The test is over.
        }
    }

    private async Task TalkAsync(NetworkStream wire)
    {
        using var reader = new StreamReader(wire, Encoding.Latin1, leaveOpen: true);
        await SayAsync(wire, "* OK [CAPABILITY IMAP4rev1] ready");
        while (await reader.ReadLineAsync(stop.Token) is { } line)
        {
            var (tag, command) = (
                line[..line.IndexOf(' ', StringComparison.Ordinal)], line[(line.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
            foreach (var answer in Answers(command)) await SayAsync(wire, answer);
            await SayAsync(wire, $"{tag} OK {(command.StartsWith("SELECT", StringComparison.Ordinal) ? "[READ-WRITE] " : "")}done");
            if (command == "LOGOUT") return;
        }
    }

    private IEnumerable<string> Answers(string command)
    {
        var words = command.Split(' ');
        switch (words[0] == "UID" ? words[1] : words[0])
        {
            case "CAPABILITY":
                return ["* CAPABILITY IMAP4rev1"];
            case "LIST":
                return
                [
                    command.Contains("INBOX", StringComparison.OrdinalIgnoreCase)
                        ? "* LIST () \"/\" INBOX"
                        : "* LIST (\\Noselect) \"/\" \"\"",
                ];
            case "SELECT":
                return
                [
                    "* FLAGS (\\Seen)", $"* {mails.Count} EXISTS", $"* OK [PERMANENTFLAGS (\\Seen{(keepsKeywords ? " \\*" : "")})] kept",
                    "* OK [UIDVALIDITY 1] valid", $"* OK [UIDNEXT {mails.Count + 1}] next",
                ];
            case "SEARCH":
                return [$"* SEARCH {string.Join(' ', Enumerable.Range(1, mails.Count).Except(Marked))}".TrimEnd()];
            case "FETCH" when command.Contains("BODY", StringComparison.Ordinal):
                return Uids(words[2])
                    .Select(uid =>
                        $"* {uid} FETCH (UID {uid} BODY[] {{{mails[uid - 1].Length}}}\r\n{Encoding.Latin1.GetString(mails[uid - 1])})");
            case "FETCH":
                return Uids(words[2]).Select(uid => $"* {uid} FETCH (UID {uid} RFC822.SIZE {mails[uid - 1].Length})");
            case "STORE":
                if (keepsKeywords) Marked.UnionWith(Uids(words[2]));
                return [];
            case "LOGOUT":
                return ["* BYE"];
            default:
                return [];
        }
    }

    private static IEnumerable<int> Uids(string set) => Parts().Matches(set).SelectMany(part =>
    {
        var first = int.Parse(part.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
        var last = part.Groups[2].Success ? int.Parse(part.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture) : first;
        return Enumerable.Range(first, last - first + 1);
    });

    private async Task SayAsync(NetworkStream wire, string line) =>
        await wire.WriteAsync(Encoding.Latin1.GetBytes(line + "\r\n"), stop.Token);

    [GeneratedRegex(@"(\d+)(?::(\d+))?")]
    private static partial Regex Parts();
}
