using System.Globalization;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Tests.Plans;
using NightWatch.Letters.Views;

namespace NightWatch.Letters.Tests.Views;

/// <summary>The line that is read first, and often alone.</summary>
public sealed class SubjectLineTests
{
    /// <summary>RFC 5322, 2.1.1 recommends at most 78 characters for a line.</summary>
    [Theory]
    [InlineData("Ox")]
    [InlineData("The Long Shingle Bank below the Disused Signal Station of Saint Elmo's Point")]
    [InlineData("Þingvallavatn við Kárastaði, norðan við gömlu brúna yfir ána sem rennur í vatnið")]
    public void It_fits_whatever_the_site_is_called_and_keeps_the_verdict_and_the_night(string site)
    {
        foreach (var (name, draft) in TestDrafts.All)
        {
            var usual = Subject(draft.With(watch => watch with { Site = watch.Site with { Name = "Ox" } }));
            var subject = Subject(draft.With(watch => watch with { Site = watch.Site with { Name = site } }));

            Assert.True(new StringInfo(subject).LengthInTextElements <= 78, $"{name}: {subject}");
            var (head, place) = (usual[..usual.IndexOf("Ox", StringComparison.Ordinal)], site[..Math.Min(site.Length, 8)]);
            Assert.StartsWith(head + place, subject, StringComparison.Ordinal);
        }
    }

    private static string Subject(LetterDraft draft) => LetterViews.Of(draft, TestDrafts.Head).Subject;
}
