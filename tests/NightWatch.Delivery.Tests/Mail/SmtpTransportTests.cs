using System.Security.Cryptography;
using MimeKit;
using MimeKit.Cryptography;
using NightWatch.Delivery.Mail;
using Org.BouncyCastle.Crypto;
using Org.BouncyCastle.OpenSsl;

namespace NightWatch.Delivery.Tests.Mail;

/// <summary>Whole conversations with a real server: STARTTLS, authentication, and the letter read back.</summary>
public sealed class SmtpTransportTests : IAsyncDisposable
{
    private readonly SecureServer server = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_letter_arrives_byte_for_byte_under_its_own_message_id()
    {
        await using var transport = new SmtpTransport(Options(), TimeProvider.System);
        var letter = GivenLetter.InHand();

        Assert.Equal(new Handover.Accepted("2.0.0 queued as 7C2"), await transport.SendAsync(letter, Cancel));

        var received = Assert.Single(server.Received);
        Assert.Equal(GivenLetter.Text(letter.Mime), GivenLetter.Text(received) + "\r\n"); // this server counts the last line end to the dot
        var message = MimeMessage.Load(new MemoryStream(received), Cancel);
        Assert.Equal((letter.MessageId, "Go – Windmill Bend – night of 6–7 Mar"), (message.MessageId, message.Subject));
        Assert.StartsWith("Sternklar über dem Fluß.", message.TextBody, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Many_letters_use_one_connection_and_every_attempt_sends_the_same_bytes()
    {
        await using var transport = new SmtpTransport(Options(), TimeProvider.System);
        for (var attempt = 0; attempt < 3; attempt++)
            Assert.IsType<Handover.Accepted>(await transport.SendAsync(GivenLetter.InHand(), Cancel));

        Assert.Equal(3, server.Received.Count);
        Assert.Single(server.Received.Select(received => GivenLetter.Text(received)).Distinct());
    }

    [Fact]
    public async Task A_wrong_password_is_one_clear_sentence_that_names_the_keys_and_not_the_password()
    {
        var options = Options();
        options.PasswordFile = server.Write("wrong", "guess-99");
        await using var transport = new SmtpTransport(options, TimeProvider.System);

        var failed = Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel));

        Assert.Equal((FailureClass.Configuration, (int?)535), (failed.Class, failed.Reply.Code));
        Assert.StartsWith(
            "The mail server refuses the user name or password (Mail:UserName, Mail:PasswordFile)",
            failed.Reply.Text,
            StringComparison.Ordinal);
        Assert.DoesNotContain("guess-99", failed.Reply.Text, StringComparison.Ordinal);
        Assert.Equal(failed.Reply.Text, await transport.CheckAsync(Cancel));
        Assert.Empty(server.Received);
    }

    [Fact]
    public async Task A_password_file_that_is_gone_is_said_before_anything_is_tried()
    {
        var options = Options();
        options.PasswordFile = "/nowhere/password";
        await using var transport = new SmtpTransport(options, TimeProvider.System);

        var failed = Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel));

        Assert.Equal(
            (FailureClass.Configuration, "Mail:PasswordFile: /nowhere/password cannot be read (no such file)."),
            (failed.Class, failed.Reply.Text));
    }

    [Fact]
    public async Task A_missing_password_where_one_is_needed_is_the_configurations_fault()
    {
        var options = Options();
        (options.UserName, options.PasswordFile) = ("", "");
        await using var transport = new SmtpTransport(options, TimeProvider.System);

        Assert.Equal(
            FailureClass.Configuration, Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel)).Class);
    }

    [Fact]
    public async Task A_certificate_that_nobody_vouches_for_is_refused()
    {
        var options = Options();
        options.CaFile = "";
        await using var transport = new SmtpTransport(options, TimeProvider.System);

        var failed = Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel));

        Assert.Equal(FailureClass.Configuration, failed.Class);
        Assert.StartsWith("The mail server's TLS cannot be trusted", failed.Reply.Text, StringComparison.Ordinal);
        Assert.Empty(server.Received);
    }

    [Fact]
    public async Task A_certificate_for_another_name_is_refused_though_its_authority_is_trusted()
    {
        await using var other = new SecureServer("relay.example.net");
        var options = Options();
        (options.Port, options.CaFile) = (other.Port, other.CaFile);
        await using var transport = new SmtpTransport(options, TimeProvider.System);

        Assert.Equal(
            FailureClass.Configuration, Assert.IsType<Handover.Failed>(await transport.SendAsync(GivenLetter.InHand(), Cancel)).Class);
        Assert.Empty(other.Received);
    }

    [Fact]
    public async Task A_check_of_a_good_server_finds_nothing_and_sends_nothing()
    {
        await using var transport = new SmtpTransport(Options(), TimeProvider.System);

        Assert.Null(await transport.CheckAsync(Cancel));
        Assert.Empty(server.Received);
    }

    [Fact]
    public async Task A_signed_letter_verifies_where_it_arrives_and_the_signature_covers_the_unsubscribe_header()
    {
        using var key = RSA.Create(2048);
        var options = Options();
        options.Dkim = new DkimOptions
        {
            Domain = "nightwatch.example.org",
            Selector = "nw1",
            KeyFile = server.Write("dkim.pem", key.ExportPkcs8PrivateKeyPem()),
        };
        Assert.Empty(options.Faults());
        await using var transport = new SmtpTransport(options, TimeProvider.System);

        await transport.SendAsync(GivenLetter.InHand(), Cancel);

        var received = MimeMessage.Load(new MemoryStream(Assert.Single(server.Received)), Cancel);
        var signature = received.Headers[received.Headers.IndexOf(HeaderId.DkimSignature)];
        Assert.True(await new DkimVerifier(new PublishedKey(key.ExportSubjectPublicKeyInfoPem())).VerifyAsync(received, signature, Cancel));
        var covered = signature
            .Value.Split(';')
            .Single(tag => tag.TrimStart().StartsWith("h=", StringComparison.Ordinal))
            .Trim()[2..]
            .Split(':', StringSplitOptions.TrimEntries);
        foreach (var name in (string[])["list-unsubscribe", "list-unsubscribe-post", "content-type", "from", "subject", "date"])
            Assert.Contains(name, covered, StringComparer.OrdinalIgnoreCase);
        received.Subject = "Go – another place";
        Assert.False(
            await new DkimVerifier(new PublishedKey(key.ExportSubjectPublicKeyInfoPem())).VerifyAsync(received, signature, Cancel));
    }

    public ValueTask DisposeAsync() => server.DisposeAsync();

    private MailOptions Options() => new()
    {
        Transport = "smtp",
        Host = "localhost",
        Port = server.Port,
        Security = "starttls",
        CaFile = server.CaFile,
        UserName = SecureServer.User,
        PasswordFile = server.PasswordFile,
        From = "NightWatch <watch@nightwatch.example.org>",
    };

    private sealed class PublishedKey(string pem) : IDkimPublicKeyLocator
    {
        public AsymmetricKeyParameter LocatePublicKey(
            string methods, string domain, string selector, CancellationToken cancellationToken = default)
        {
            Assert.Equal(("nightwatch.example.org", "nw1"), (domain, selector));
            return (AsymmetricKeyParameter)new PemReader(new StringReader(pem)).ReadObject();
        }

        public Task<AsymmetricKeyParameter> LocatePublicKeyAsync(
            string methods,
            string domain,
            string selector,
            CancellationToken cancellationToken = default
        ) => Task.FromResult(LocatePublicKey(methods, domain, selector, cancellationToken));
    }
}
