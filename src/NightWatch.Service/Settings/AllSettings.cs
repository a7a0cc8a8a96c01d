using System.Text.Json;
using NightWatch.Delivery.Bounces;
using NightWatch.Delivery.Mail;
using NightWatch.Delivery.Outbox;
using NightWatch.Letters.Links;
using NightWatch.Service.Terminal;
using NightWatch.Store;
using NightWatch.Watchkeeping.Calls;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Records;
using NightWatch.Weather.Fake;

namespace NightWatch.Service.Settings;

/// <summary>Everything that can be set, read from appsettings.json, --config and the environment, the later over the earlier.</summary>
internal sealed record AllSettings(
    IConfiguration Configuration,
    DatabaseOptions Database,
    FeedsOptions Feeds,
    MailOptions Mail,
    OutboxOptions Outbox,
    ServiceOptions Service)
{
    /// <summary>What the calls are held against.</summary>
    public ObservationsOptions Observations { get; init; } = new();

    public WebhookOptions Webhooks { get; init; } = new();

    public BounceOptions Bounces { get; init; } = new();

    /// <summary>NIGHTWATCH__MAIL__HOST sets Mail:Host.</summary>
    public const string EnvironmentPrefix = "NIGHTWATCH__";

    private const string FileName = "appsettings.json";

    /// <summary>Reads and binds; ranges are judged by <see cref="Faults"/>.</summary>
    /// <param name="directory">Where appsettings.json may lie.</param>
    /// <param name="configPath">Another file, over it; null for none.</param>
    /// <exception cref="BadInputException">A file is missing or no JSON, a key is unknown or its value of the wrong type.</exception>
    public static AllSettings Read(string directory, string? configPath)
    {
        var configuration = Load(directory, configPath);
        string[] known =
        [
            DatabaseOptions.Section, FeedsOptions.Section, MailOptions.Section, OutboxOptions.Section, ServiceOptions.Section,
            ObservationsOptions.Section, WebhookOptions.Section, BounceOptions.Section, "Logging", "AllowedHosts",
        ];
        var unknown = configuration
            .GetChildren()
            .Select(section => section.Key)
            .FirstOrDefault(key => !known.Contains(key, StringComparer.OrdinalIgnoreCase));
        if (unknown is not null)
            throw new BadInputException($"configuration key {unknown} is not known; accepted: {string.Join(", ", known)}.");
        return new(
            configuration,
            Bind(configuration, DatabaseOptions.Section, section => section.Get<DatabaseOptions>(Strict)),
            Bind(configuration, FeedsOptions.Section, section => section.Get<FeedsOptions>(Strict)),
            Bind(configuration, MailOptions.Section, section => section.Get<MailOptions>(Strict)),
            Bind(configuration, OutboxOptions.Section, section => section.Get<OutboxOptions>(Strict)),
            Bind(configuration, ServiceOptions.Section, section => section.Get<ServiceOptions>(Strict)))
        {
            Observations = Bind(configuration, ObservationsOptions.Section, section => section.Get<ObservationsOptions>(Strict)),
            Webhooks = Bind(configuration, WebhookOptions.Section, section => section.Get<WebhookOptions>(Strict)),
            Bounces = Bind(configuration, BounceOptions.Section, section => section.Get<BounceOptions>(Strict)),
        };
    }

    /// <summary>
    /// Takes the zone file of the settings into use, if they can be read and name a good one; every command that needs them says what is
    /// wrong.
    /// </summary>
    /// <remarks>Before anything is parsed, since arguments and files may hold zones. Nothing is read where there are no settings.</remarks>
    public static void TakeZones(string directory, string? configPath)
    {
        const string Key = ServiceOptions.Section + ":" + nameof(ServiceOptions.ZoneFile);
        if (
            configPath is null
            && !File.Exists(Path.Combine(directory, FileName))
            && Environment.GetEnvironmentVariable(EnvironmentPrefix + Key.ToUpperInvariant().Replace(":", "__", StringComparison.Ordinal))
                is null)
            return;
        try
        {
            ZoneFile.Use(Load(directory, configPath)[Key] ?? "");
        }
        catch (BadInputException)
        {
        }
    }

    /// <summary>Whether the settings ask for logs of debug level; no where they cannot be read.</summary>
    public static bool LogsDebug(string directory, string? configPath)
    {
        try
        {
            return Enum.TryParse<LogLevel>(Load(directory, configPath)["Logging:LogLevel:Default"], ignoreCase: true, out var level)
                && level <= LogLevel.Debug;
        }
        catch (BadInputException)
        {
            return false;
        }
    }

    /// <summary>What is out of range, one sentence a fault, each naming its key; empty: nothing.</summary>
    public IReadOnlyList<string> Faults() =>
        [
            .. Database.Faults(),
            .. Feeds.Faults(),
            .. Mail.Faults(),
            .. Outbox.Faults(),
            .. Service.Faults(),
            .. Observations.Faults(Feeds.Contact),
            .. Webhooks.Faults(),
            .. Bounces.Faults(),
        ];

    /// <summary>Reads, and refuses what is out of range.</summary>
    /// <exception cref="BadInputException">The first fault, and how many more there are.</exception>
    public static AllSettings ReadValid(string directory, string? configPath)
    {
        var settings = Read(directory, configPath);
        var faults = settings.Faults();
        return faults.Count == 0
            ? settings
            : throw new BadInputException(
                "configuration: " + faults[0] + (faults.Count > 1 ? $" ({faults.Count - 1} more; 'nightwatch check' lists them.)" : ""));
    }

    /// <summary>
    /// The settings of a rehearsal: invented weather, a database of its own, letters into a folder; nothing of the machine's is read.
    /// </summary>
    public static AllSettings ForRehearsal(
        string databaseFile, string letterFolder, long seed, ClimateKind climate = ClimateKinds.Default) =>
        new(
            new ConfigurationBuilder().Build(),
            new DatabaseOptions { Connection = databaseFile },
            new FeedsOptions
            {
                Order = FeedsOptions.FakeId,
                Usage = "private",
                FakeSeed = seed,
                FakeClimate = climate.Word(),
            },
            new MailOptions
            {
                Transport = "folder",
                Folder = letterFolder,
                From = "NightWatch rehearsal <nightwatch@example.org>",
            },
            new OutboxOptions(),
            new ServiceOptions());

    /// <summary>Who the letters are from.</summary>
    /// <param name="signer">Signs their links; null: letters without links.</param>
    public LetterHead Head(ILinkSigner? signer = null)
    {
        var from = Mail.ReadFrom();
        return new LetterHead(
            from,
            Service.MessageIdDomain.Length > 0 ? Service.MessageIdDomain : from.Domain,
            Service.PagesBase.Length > 0 ? new Uri(Service.PagesBase) : null,
            Service.ListUnsubscribe.Length > 0 ? Service.ListUnsubscribe : null)
        {
            Signer = signer,
            IdKey = Service.IdKeyFile.Length > 0 ? System.Text.Encoding.UTF8.GetBytes(SecretFile.Read(Service.IdKeyFile)) : default,
        };
    }

    private static IConfiguration Load(string directory, string? configPath)
    {
        var builder = new ConfigurationBuilder().SetBasePath(directory).AddJsonFile(FileName, optional: true, reloadOnChange: false);
        if (configPath is not null) builder.AddJsonFile(Path.GetFullPath(configPath, directory), optional: false, reloadOnChange: false);
        try
        {
            return builder.AddEnvironmentVariables(EnvironmentPrefix).Build();
        }
        catch (FileNotFoundException)
        {
            throw new BadInputException($"--config: there is no file '{configPath}'.");
        }
        catch (InvalidDataException broken)
        {
            var cause = broken.GetBaseException();
            var line = cause is JsonException { LineNumber: { } number } ? $" line {number + 1}" : "";
            throw new BadInputException(
                $"configuration file {configPath ?? FileName}{line} is not JSON: {cause.Message.Split(" LineNumber:")[0]}");
        }
    }

    private static void Strict(BinderOptions binder) => binder.ErrorOnUnknownConfiguration = true;

    /// <param name="bind">Written out for each type, so that the compiler writes the binding: at run time it costs every start its
    /// reflection.</param>
    private static T Bind<T>(IConfiguration configuration, string section, Func<IConfigurationSection, T?> bind)
        where T : class, new()
    {
        try
        {
            return bind(configuration.GetSection(section)) ?? new T();
        }
        catch (InvalidOperationException refused)
        {
            throw new BadInputException($"configuration section {section}: {refused.Message}");
        }
    }
}
