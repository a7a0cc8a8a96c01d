namespace NightWatch.Weather.Http;

/// <summary>Who is asking: product and the installation's own contact.</summary>
internal static class UserAgent
{
    /// <summary>The contact, checked.</summary>
    /// <param name="contact">A mail address or a web page.</param>
    /// <param name="feed">For the sentence.</param>
    /// <exception cref="ArgumentException">There is none, or it could not be one.</exception>
    public static string CheckedContact(string? contact, string feed)
    {
        var trimmed = contact?.Trim() ?? "";
        if (trimmed.Length == 0)
        {
            throw new ArgumentException(
                $"{feed} needs a contact: a mail address or web page of whoever runs this installation. Its terms of service demand one.");
        }

        var isMail = trimmed.IndexOf('@', StringComparison.Ordinal) is > 0 and var at && at < trimmed.Length - 1;
        var isPage =
            Uri.TryCreate(trimmed, UriKind.Absolute, out var uri) && (uri.Scheme == Uri.UriSchemeHttp || uri.Scheme == Uri.UriSchemeHttps);
        // Printable ASCII without blanks or brackets: anything else would break the header or hide a second one in it.
        var isSafe = trimmed.All(c => c is > ' ' and < (char)127 and not ('(' or ')' or '"' or '\\'));
        return isSafe && (isMail || isPage)
            ? trimmed
            : throw new ArgumentException($"{feed}: the contact '{trimmed}' is neither a mail address nor a web page (https://...).");
    }
}
