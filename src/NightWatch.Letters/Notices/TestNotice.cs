using NodaTime;
using NodaTime.Text;

namespace NightWatch.Letters.Notices;

/// <summary>A letter that says nothing but that letters arrive. It carries the headers of the real ones, so that a relay treats it alike.</summary>
/// <param name="From">Who sends.</param>
/// <param name="Address">To whom.</param>
/// <param name="Now">The clock reading.</param>
internal sealed record TestNotice(string From, string Address, Instant Now)
{
    public string Key => $"test|{Address}|{Now.ToUnixTimeMilliseconds()}";

    public NoticeView View => new()
    {
        Subject = "NightWatch test letter: mail arrives",
        Headline = "NightWatch test letter",
        Says =
        [
            "This is a test letter from NightWatch. That you read it means that letters from this installation reach you.",
            "It is about no night and asks nothing of you. Should it lie in the junk folder, mark its sender as wanted, or the word that a night is off will lie there too.",
        ],
        Foot = [$"Written {InstantPattern.General.Format(Now)}, from {From}."],
    };
}
