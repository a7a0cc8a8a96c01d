using System.Text;
using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.Repositories;
using NightWatch.Store.Secrets;
using NodaTime;

namespace NightWatch.Pages.Security;

/// <summary>Keeps the keys of data protection (antiforgery tokens) in the database: a restart or a second process knows the forms of the first.</summary>
internal sealed class KeyRing(SecretStore secrets, IClock clock) : IXmlRepository
{
    private const string Prefix = "key-ring/";

    // The interface is not asynchronous; it is called once by the first form and once in three months.
    public IReadOnlyCollection<XElement> GetAllElements() =>
        [.. secrets.ListAsync(Prefix).GetAwaiter().GetResult().Select(xml => XElement.Parse(Encoding.UTF8.GetString(xml)))];

    public void StoreElement(XElement element, string friendlyName) =>
        secrets.AddAsync($"{Prefix}{friendlyName}", Encoding.UTF8.GetBytes(element.ToString(SaveOptions.DisableFormatting)), clock.GetCurrentInstant()).GetAwaiter().GetResult();
}
