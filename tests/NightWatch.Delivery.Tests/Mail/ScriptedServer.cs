using System.Net;
using System.Net.Sockets;
using System.Text;

namespace NightWatch.Delivery.Tests.Mail;

/// <summary>What a bad mail server says at each step. "DROP" hangs up, "STALL" says nothing, "...|DROP" speaks and hangs up.</summary>
internal sealed record SmtpScript
{
    public string Greeting { get; init; } = "220 mx.example.org ESMTP";

    public string Ehlo { get; init; } = "250-mx.example.org\r\n250-PIPELINING\r\n250 SIZE 1000000";

    public string Mail { get; init; } = "250 2.1.0 ok";

    public string Rcpt { get; init; } = "250 2.1.5 ok";

    public string Data { get; init; } = "354 go ahead";

    /// <summary>Hangs up after the first line of the text.</summary>
    public bool DropInText { get; init; }

    public string Dot { get; init; } = "250 2.0.0 queued as 4F1";
}

/// <summary>A mail server on loopback that follows a script and keeps what it was told and what it accepted.</summary>
internal sealed class ScriptedServer : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource over = new();
    private readonly TaskCompletionSource stalled = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly List<string> commands = [];
    private readonly List<string> accepted = [];
    private readonly Task serving;
    private int open;

    public ScriptedServer(SmtpScript script)
    {
        Script = script;
        listener.Start();
        serving = ServeAsync();
    }

    public SmtpScript Script { get; set; }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    public int Connections { get; private set; }

    /// <summary>Conversations under way.</summary>
    public int Open => Volatile.Read(ref open);

    /// <summary>What is kept of a text that was accepted; all of it, unless a test takes thousands.</summary>
    public Func<string, string> Keep { get; init; } = text => text;

    /// <summary>Told what has just come ("connect", a verb, "text", "dot") before it is answered, and "accepted" after the 250.</summary>
    public Action<string> Reached { get; set; } = _ => { };

    /// <summary>The server has fallen silent.</summary>
    public Task Stalled => stalled.Task;

    public IReadOnlyList<string> Commands
    {
        get
        {
            lock (commands) return [.. commands];
        }
    }

    /// <summary>The texts it said 250 to.</summary>
    public IReadOnlyList<string> Accepted
    {
        get
        {
            lock (commands) return [.. accepted];
        }
    }

    public async ValueTask DisposeAsync()
    {
        await over.CancelAsync();
        await serving;
        // Not before: to accept on a listener that was stopped between two clients is a fault of its own.
        listener.Stop();
        over.Dispose();
    }

    private async Task ServeAsync()
    {
        var conversations = new List<Task>();
        try
        {
            while (true)
            {
                var client = await listener.AcceptTcpClientAsync(over.Token);
                Connections++;
                conversations.Add(TalkAsync(client));
            }
        }
        catch (Exception fault) when (fault is OperationCanceledException or SocketException)
        {
        }

        await Task.WhenAll(conversations);
    }

    private async Task TalkAsync(TcpClient client)
    {
        using var owned = client;
        Interlocked.Increment(ref open);
        try
        {
            await using var stream = client.GetStream();
            using var reader = new StreamReader(stream, Encoding.Latin1);
            Reached("connect");
            if (!await SayAsync(stream, Script.Greeting)) return;
            while (await reader.ReadLineAsync(over.Token) is { } line)
            {
                lock (commands) commands.Add(line);
                var verb = line.Split(' ', 2)[0].ToUpperInvariant();
                Reached(verb);
                var goOn = verb switch
                {
                    "EHLO" or "HELO" => await SayAsync(stream, Script.Ehlo),
                    "MAIL" => await SayAsync(stream, Script.Mail),
                    "RCPT" => await SayAsync(stream, Script.Rcpt),
                    "DATA" => await SayAsync(stream, Script.Data)
                        && (!Script.Data.StartsWith("354", StringComparison.Ordinal) || await TakeTextAsync(stream, reader)),
                    "QUIT" => await SayAsync(stream, "221 bye|DROP"),
                    _ => await SayAsync(stream, "250 ok"),
                };
                if (!goOn) return;
            }
        }
        catch (Exception fault) when (fault is IOException or OperationCanceledException)
        {
        }
        finally
        {
            Interlocked.Decrement(ref open);
        }
    }

    private async Task<bool> TakeTextAsync(NetworkStream stream, StreamReader reader)
    {
        var text = new StringBuilder();
        while (await reader.ReadLineAsync(over.Token) is { } line)
        {
            if (text.Length == 0) Reached("text");
            if (Script.DropInText) return false;
            if (line == ".")
            {
                if (Script.Dot.StartsWith("250", StringComparison.Ordinal)) lock (commands) accepted.Add(Keep(text.ToString()));
                Reached("dot");
                var goOn = await SayAsync(stream, Script.Dot);
                Reached("accepted");
                return goOn;
            }

            text.Append(line.StartsWith('.') ? line[1..] : line).Append("\r\n");
        }

        return false;
    }

    private async Task<bool> SayAsync(NetworkStream stream, string words)
    {
        if (words == "DROP") return false;
        if (words == "STALL")
        {
            stalled.TrySetResult();
            await Task.Delay(Timeout.Infinite, over.Token);
        }

        var parts = words.Split('|');
        await stream.WriteAsync(Encoding.Latin1.GetBytes(parts[0] + "\r\n"), over.Token);
        return parts.Length == 1;
    }
}
