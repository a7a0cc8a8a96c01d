using NightWatch.Letters.Links;
using NightWatch.Letters.Tests.Plans;

namespace NightWatch.Letters.Tests.Links;

public sealed class LetterLinksTests
{
    private static readonly LinkSigner Signer = new("Jefe"u8.ToArray());

    private static readonly LetterLinks Links = new(new Uri("https://night.example/pages"), Signer);

    // RFC 4231, test case 2 (key "Jefe"), its first 16 bytes 5bdcc146bf60754e6a042426089575c7 in base64url.
    [Fact]
    public void A_signature_is_HMAC_SHA256_cut_to_128_bits() =>
        Assert.Equal("W9zBRr9gdU5qBCQmCJV1xw", Signer.Sign("what do ya want for nothing?"));

    [Fact]
    public void Parts_are_joined_by_line_breaks_and_can_have_none_themselves()
    {
        Assert.Equal(Signer.Sign("night\nsalt\n2027-06-04"), Signer.Sign("night", "salt", "2027-06-04"));
        Assert.Throws<ArgumentException>(() => Signer.Sign("night", "salt\n2027-06-04"));
    }

    [Fact]
    public void A_link_leads_below_the_base_and_carries_its_key()
    {
        var watch = Ines.CoreWatch;
        var key = LetterLinks.NightKey(Signer, watch, Ines.Night);

        Assert.Equal(
            $"https://night.example/pages/watches/{watch.Id}/nights/2027-06-04?k={key}",
            Links.Night(watch, Ines.Night)!.AbsoluteUri);
        Assert.Equal(
            $"https://night.example/pages/watches/{watch.Id}/nights/2027-06-04/debrief?was=clear&k={key}",
            Links.Debrief(watch, Ines.Night, "clear")!.AbsoluteUri);
        Assert.Equal(
            $"https://night.example/pages/unsubscribe?w={watch.Id}&k={LetterLinks.UnsubscribeKey(Signer, watch)}",
            Links.Unsubscribe(watch)!.AbsoluteUri);
    }

    [Fact]
    public void A_key_opens_one_purpose_one_watch_one_night_and_one_address()
    {
        var watch = Ines.CoreWatch;
        var other = watch with { Subscriber = watch.Subscriber with { Address = "somebody.else@example.org" } };
        string[] keys =
        [
            LetterLinks.NightKey(Signer, watch, Ines.Night),
            LetterLinks.NightKey(Signer, watch, Ines.Night.PlusDays(1)),
            LetterLinks.NightKey(Signer, other, Ines.Night),
            LetterLinks.NightKey(Signer, Ines.SaltShelf, Ines.Night),
            LetterLinks.WatchKey(Signer, watch),
            LetterLinks.UnsubscribeKey(Signer, watch),
            LetterLinks.CalendarKey(Signer, watch.Subscriber.Address),
            LetterLinks.NightKey(new LinkSigner("another"u8.ToArray()), watch, Ines.Night),
        ];

        Assert.Distinct(keys);
    }

    [Fact]
    public void The_case_of_an_address_does_not_matter() =>
        Assert.Equal(LetterLinks.CalendarKey(Signer, "ines@example.org"), LetterLinks.CalendarKey(Signer, " Ines@Example.org"));

    [Fact]
    public void Without_pages_or_without_a_key_there_are_no_links()
    {
        Assert.Null(new LetterLinks(null, Signer).Season(Ines.CoreWatch));
        Assert.Null(new LetterLinks(new Uri("https://night.example/"), null).Unsubscribe(Ines.CoreWatch));
    }

    [Theory]
    [InlineData(null, false)]
    [InlineData("", false)]
    [InlineData("W9zBRr9gdU5qBCQmCJV1x", false)]
    [InlineData("W9zBRr9gdU5qBCQmCJV1xw", true)]
    public void Only_the_whole_signature_is_right(string? given, bool right) =>
        Assert.Equal(right, LinkSignatures.AreEqual(Signer.Sign("what do ya want for nothing?"), given));
}
