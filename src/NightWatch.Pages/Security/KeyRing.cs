using System.Text;
using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.Repositories;
using NightWatch.Store.Secrets;
using NodaTime;

namespace NightWatch.Pages.Security;

/// <summary>
/// Keeps the keys of data protection (antiforgery tokens) in the database: a restart or a second process knows the forms of the first. A
/// key that cannot be read is left out and noted; only the forms that it made must be asked for again.
/// </summary>
internal sealed class KeyRing(SecretStore secrets, IClock clock) : IXmlRepository
{
    private const string Prefix = "key-ring/";

    // The interface is not asynchronous; it is called once by the first form and once in three months.
    public IReadOnlyCollection<XElement> GetAllElements() => ReadAsync(secrets, CancellationToken.None).GetAwaiter().GetResult();

    /// <summary>The keys that can be read, by name.</summary>
    public static Task<IReadOnlyList<XElement>> ReadAsync(SecretStore secrets, CancellationToken cancellationToken) =>
        secrets.ListAsync(Prefix, xml => XElement.Parse(Encoding.UTF8.GetString(xml)), cancellationToken);

    public void StoreElement(XElement element, string friendlyName) =>
        secrets
            .AddAsync(
                $"{Prefix}{friendlyName}",
                Encoding.UTF8.GetBytes(element.ToString(SaveOptions.DisableFormatting)),
                clock.GetCurrentInstant())
            .GetAwaiter()
            .GetResult();
}
