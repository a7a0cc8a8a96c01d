using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Notices;

/// <summary>
/// A letter that says nothing but that letters arrive. It carries the headers of the real ones, so that a relay treats it alike.
/// </summary>
/// <param name="From">Who sends.</param>
/// <param name="Address">The recipient's address.</param>
/// <param name="Now">The clock reading.</param>
internal sealed record TestNotice(string From, string Address, Instant Now)
{
    public string Key => $"test|{Address}|{Now.ToUnixTimeMilliseconds()}";

    public NoticeView View => NoticeView.Of(English.Instance.Test(From, Now), English.Instance, link: null);
}
