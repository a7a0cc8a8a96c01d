using System.Buffers;
using System.Net;
using System.Security.Authentication;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using NightWatch.Weather.Tests.Loopback;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.Protocol;
using SmtpServer.Storage;
using SmtpResponse = SmtpServer.Protocol.SmtpResponse;

namespace NightWatch.Delivery.Tests.Mail;

/// <summary>A real SMTP server (the SmtpServer library) in this process: STARTTLS, and authentication as ilse / marula-7.</summary>
internal sealed class SecureServer : IAsyncDisposable
{
    public const string User = "ilse";
    public const string Password = "marula-7";

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-smtp-").FullName;
    private readonly CancellationTokenSource over = new();
    private readonly Ledger ledger = new();
    private readonly Task running;
    private readonly X509Certificate2 certificate;

    /// <param name="name">Whom the certificate is for.</param>
    public SecureServer(string name = "localhost")
    {
        certificate = Certify(name);
        CaFile = Write("ca.pem", certificate.ExportCertificatePem());
        PasswordFile = Write("password", Password + "\n");
        Port = FreePort.Take();
        var parts = new SmtpServer.ComponentModel.ServiceProvider();
        parts.Add(ledger);
        parts.Add(new DelegatingUserAuthenticator((user, password) => user == User && password == Password));
        var options = new SmtpServerOptionsBuilder()
            .ServerName("localhost")
            .Endpoint(endpoint => endpoint
                .Endpoint(new IPEndPoint(IPAddress.Loopback, Port))
                .AuthenticationRequired()
                .Certificate(certificate)
                .SupportedSslProtocols(SslProtocols.Tls12 | SslProtocols.Tls13))
            .Build();
        running = new global::SmtpServer.SmtpServer(options, parts).StartAsync(over.Token);
    }

    public int Port { get; }

    public string CaFile { get; }

    public string PasswordFile { get; private set; }

    /// <summary>Letters as they came, byte for byte.</summary>
    public IReadOnlyList<byte[]> Received => ledger.Received;

    public string Write(string name, string text)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllText(path, text);
        return path;
    }

    public async ValueTask DisposeAsync()
    {
        await over.CancelAsync();
        try
        {
            await running;
        }
        catch (OperationCanceledException)
        {
        }

        certificate.Dispose();
        over.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    private static X509Certificate2 Certify(string name)
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName(name);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        using var made = request.CreateSelfSigned(DateTimeOffset.UnixEpoch.AddYears(40), DateTimeOffset.UnixEpoch.AddYears(130));
        return X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pfx), null);
    }

    private sealed class Ledger : MessageStore
    {
        private readonly List<byte[]> received = [];

        public IReadOnlyList<byte[]> Received
        {
            get
            {
                lock (received) return [.. received];
            }
        }

        public override Task<SmtpResponse> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            lock (received) received.Add(buffer.ToArray());
            return Task.FromResult(new SmtpResponse(SmtpReplyCode.Ok, "2.0.0 queued as 7C2"));
        }
    }
}
