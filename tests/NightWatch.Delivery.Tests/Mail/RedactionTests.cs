using NightWatch.Delivery.Mail;

namespace NightWatch.Delivery.Tests.Mail;

public sealed class RedactionTests
{
    [Theory]
    [InlineData("550 5.1.1 <ilse.vermaak+night@example.org>: no such user", "550 5.1.1 <i***@e***>: no such user")]
    [InlineData("two: a@b.example, Ünal@münchen.example.", "two: a***@b***, Ü***@m***.")]
    [InlineData("line one\r\n line two", "line one line two")]
    [InlineData("nobody here @ all", "nobody here @ all")]
    public void Addresses_are_struck_out_and_the_text_stays_on_one_line(string text, string expected) =>
        Assert.Equal(expected, Redaction.Of(text));

    [Fact]
    public void A_server_that_talks_for_ever_is_cut_short() => Assert.Equal(301, Redaction.Of(new string('x', 5000)).Length);
}
