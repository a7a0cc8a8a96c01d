using NightWatch.Delivery.Mail;

namespace NightWatch.Delivery.Tests.Mail;

public sealed class MailOptionsTests
{
    [Fact]
    public void The_defaults_write_into_a_folder_and_have_no_fault() => Assert.Empty(new MailOptions().Faults());

    public static TheoryData<string, MailOptions> Faulty =>
        new()
        {
            {
                "Mail:Transport",
                new() { Transport = "pigeon" }
            },
            {
                "Mail:Folder",
                new() { Folder = " " }
            },
            {
                "Mail:From",
                new() { From = "NightWatch" }
            },
            { "Mail:Host", Smtp(options => options.Host = "") },
            { "Mail:Port", Smtp(options => options.Port = 70000) },
            { "Mail:Security", Smtp(options => options.Security = "maybe") },
            { "Mail:Security", Smtp(options => (options.Security, options.Host) = ("none", "mail.example.org")) },
            { "Mail:PasswordFile", Smtp(options => options.UserName = "ilse") },
            { "Mail:UserName", Smtp(options => options.PasswordFile = typeof(MailOptionsTests).Assembly.Location) },
            { "Mail:PasswordFile", Smtp(options => (options.UserName, options.PasswordFile) = ("ilse", "/nowhere/password")) },
            { "Mail:CaFile", Smtp(options => options.CaFile = "/nowhere/ca.pem") },
            { "Mail:ConnectTimeoutSeconds", Smtp(options => options.ConnectTimeoutSeconds = 0) },
            { "Mail:ReplyTimeoutSeconds", Smtp(options => options.ReplyTimeoutSeconds = 9999) },
            { "Mail:AcceptTimeoutSeconds", Smtp(options => options.AcceptTimeoutSeconds = -1) },
            { "Mail:Dkim:Selector", Smtp(options => options.Dkim = new() { Domain = "example.org", KeyFile = "/nowhere/key.pem" }) },
            {
                "Mail:Dkim:KeyFile",
                Smtp(options =>
                    options.Dkim = new()
                    {
                        Domain = "example.org",
                        Selector = "nw1",
                        KeyFile = "/nowhere/key.pem",
                    })
            },
            { "Mail:Dkim:Domain", Smtp(options => options.Dkim = new() { Selector = "nw1", KeyFile = "/nowhere/key.pem" }) },
        };

    [Theory, MemberData(nameof(Faulty))]
    public void A_fault_is_one_sentence_that_names_its_key(string key, MailOptions options)
    {
        var fault = Assert.Single(options.Faults());

        Assert.StartsWith(key, fault, StringComparison.Ordinal);
        Assert.EndsWith(".", fault, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', fault);
    }

    [Theory]
    [InlineData("localhost")]
    [InlineData("127.0.0.1")]
    [InlineData("::1")]
    public void Mail_in_the_clear_stays_on_this_machine(string host) =>
        Assert.Empty(Smtp(options => (options.Security, options.Host) = ("none", host)).Faults());

    [Fact]
    public void A_secret_file_open_to_everybody_is_pointed_out()
    {
        if (OperatingSystem.IsWindows()) return;
        var path = Path.GetTempFileName();
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.OtherRead);
        Assert.StartsWith("Mail:PasswordFile", SecretFile.Advice(path, "Mail:PasswordFile"), StringComparison.Ordinal);
        File.SetUnixFileMode(path, UnixFileMode.UserRead);
        Assert.Null(SecretFile.Advice(path, "Mail:PasswordFile"));
        File.Delete(path);
    }

    private static MailOptions Smtp(Action<MailOptions> change)
    {
        var options = new MailOptions { Transport = "smtp" };
        change(options);
        return options;
    }
}
