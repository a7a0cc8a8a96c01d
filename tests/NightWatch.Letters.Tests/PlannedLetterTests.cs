using MimeKit;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Letters.Tests.Plans;
using NightWatch.Planning.Nights;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Tests;

/// <summary>A morning timeline for a night as the planner plans it: the whole way from forecast to letter.</summary>
public sealed class PlannedLetterTests
{
    [Fact]
    public async Task The_field_plan_stands_in_both_layouts()
    {
        var letter = await WriteAsync(PlannedNights.CoreLeavesTheFrame);

        foreach (var body in new[] { letter.Text, letter.Html.Replace("&nbsp;", " ", StringComparison.Ordinal) })
        {
            Assert.Contains("In the field", body, StringComparison.OrdinalIgnoreCase);
            foreach (var name in new[] { "Aim", "Move", "Test frames", "Sky in the frame", "Dark sky", "Lens", "Ground", "Batteries" })
                Assert.Contains(name, body, StringComparison.Ordinal);
            Assert.Contains("Without a heater dew from", Flat(body), StringComparison.Ordinal);
            Assert.Contains("its battery suffices", Flat(body), StringComparison.Ordinal);
            Assert.Contains("estimated", body, StringComparison.Ordinal);
            Assert.Contains("GeoNames", body, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_path_across_the_frame_is_the_second_picture_named_by_its_content_id()
    {
        var letter = await WriteAsync(PlannedNights.CoreLeavesTheFrame);
        var pictures = letter.Message.BodyParts.OfType<MimePart>().Where(part => part.ContentType.IsMimeType("image", "png")).ToArray();

        Assert.Equal(2, pictures.Length);
        Assert.All(pictures, picture => Assert.Contains($"cid:{picture.ContentId}", letter.Message.HtmlBody, StringComparison.Ordinal));
        Assert.Contains("Path of the subject across the frame", letter.Message.HtmlBody, StringComparison.Ordinal);
        Assert.DoesNotContain("cid:", letter.Html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hazards_stand_first_and_the_authorities_have_one_sentence()
    {
        var letter = await WriteAsync(PlannedNights.Of(PlannedNights.Watch, thunder: 0.15));
        var text = Flat(letter.Text);
        var (thunder, drive) = (
            text.IndexOf("Thunder may come", StringComparison.Ordinal),
            text.IndexOf("hours by the end of the drive home", StringComparison.Ordinal));

        Assert.True(thunder >= 0 && thunder < drive && drive < text.IndexOf("NEXT:", StringComparison.Ordinal));
        Assert.Single(text.Split(English.Instance.Deference)[1..]);
    }

    private static async Task<Letter> WriteAsync(NightPlan plan)
    {
        using var writer = new LetterWriter(TestDrafts.Head);
        var order = new LetterOrder(
            LetterKind.MorningTimeline,
            plan,
            new ToldNight { WatchId = plan.Watch.Id, Night = plan.Night },
            plan.MadeAt + Duration.FromHours(2),
            "Its morning.");
        return await writer.WriteAsync(new LetterDraft { Orders = [order], Now = plan.MadeAt }, TestContext.Current.CancellationToken);
    }

    private static string Flat(string text) =>
        string.Join(' ', text.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
}
