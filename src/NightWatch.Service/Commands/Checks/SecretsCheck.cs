using NightWatch.Delivery.Mail;

namespace NightWatch.Service.Commands.Checks;

/// <summary>Secrets lie in files that only the service may read.</summary>
internal static class SecretsCheck
{
    public static Task<IReadOnlyList<Finding>> RunAsync(CheckBench bench, CancellationToken stop)
    {
        var settings = bench.Settings;
        (string Path, string Key)[] files =
        [
            (settings.Mail.PasswordFile, "Mail:PasswordFile"),
            (settings.Mail.Dkim.KeyFile, "Mail:Dkim:KeyFile"),
            (settings.Service.IdKeyFile, "Service:IdKeyFile"),
            (settings.Service.OperatorKeyFile, "Service:OperatorKeyFile"),
            (settings.Bounces.PasswordFile, "Bounces:PasswordFile"),
            (settings.Feeds.OpenMeteoKeyFile, "Feeds:OpenMeteoKeyFile"),
        ];
        var named = files.Where(file => file.Path.Length > 0).ToList();
        var open = named.Select(file => SecretFile.Advice(file.Path, file.Key)).OfType<string>().ToList();
        return Task.FromResult<IReadOnlyList<Finding>>(
            open.Count > 0 ? [.. open.Select(advice => Finding.Warning("secrets", advice))]
            : named.Count > 0 ? [Finding.Ok("secrets", $"{named.Count} files, closed to other users.")]
            : [Finding.Ok("secrets", "none in use.")]);
    }
}
