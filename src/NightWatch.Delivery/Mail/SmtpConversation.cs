using MailKit;

namespace NightWatch.Delivery.Mail;

/// <summary>How far a letter has come. From <see cref="Text"/> on a break leaves it unknown whether the server has it.</summary>
internal enum SmtpPhase
{
    /// <summary>Greeting, TLS, authentication.</summary>
    Connecting,

    /// <summary>Sender, recipient, DATA asked for.</summary>
    Envelope,

    /// <summary>The server said 354: the text is on its way.</summary>
    Text,

    /// <summary>The final dot is out: only the server's answer is missing.</summary>
    Handed,
}

/// <summary>
/// Listens to the conversation, since MailKit's exceptions are the same on both sides of DATA's 354. It keeps no text, so no
/// password and no letter can come from here into a log.
/// </summary>
internal sealed class SmtpConversation : IProtocolLogger
{
    private static readonly byte[] Dot = "\r\n.\r\n"u8.ToArray();

    private readonly byte[] sent = new byte[Dot.Length];
    private int column;
    private int code;

    /// <summary>How far it is.</summary>
    public SmtpPhase Phase { get; private set; } = SmtpPhase.Connecting;

    /// <summary>Called at every sign of life, with the phase after it: the time for the next reply starts anew.</summary>
    public Action<SmtpPhase> Alive { get; set; } = _ => { };

    public IAuthenticationSecretDetector? AuthenticationSecretDetector { get; set; }

    /// <summary>A letter begins.</summary>
    public void Begin()
    {
        Phase = SmtpPhase.Envelope;
        Array.Clear(sent);
    }

    public void LogConnect(Uri uri) => Alive(Phase);

    public void LogClient(byte[] buffer, int offset, int count)
    {
        if (Phase == SmtpPhase.Text)
        {
            foreach (var value in buffer.AsSpan(offset, count))
                (sent[0], sent[1], sent[2], sent[3], sent[4]) = (sent[1], sent[2], sent[3], sent[4], value);
            if (sent.AsSpan().SequenceEqual(Dot)) Phase = SmtpPhase.Handed;
        }

        Alive(Phase);
    }

    public void LogServer(byte[] buffer, int offset, int count)
    {
        foreach (var value in buffer.AsSpan(offset, count))
        {
            if (value == '\n')
            {
                if (Phase == SmtpPhase.Envelope && code == 354) Phase = SmtpPhase.Text;
                (column, code) = (0, 0);
            }
            else if (column++ < 3)
            {
                code = code * 10 + (value - '0');
            }
        }

        Alive(Phase);
    }

    public void Dispose()
    {
    }
}
