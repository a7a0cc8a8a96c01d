using Ical.Net.CalendarComponents;
using MimeKit;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Tests.Plans;
using NodaTime;

namespace NightWatch.Letters.Tests.Calendar;

// RFC 5545 and RFC 5546, read back by the library's own parser.
public sealed class NightEntryTests : IDisposable
{
    private readonly LetterWriter writer = new(TestDrafts.Head);

    public void Dispose() => writer.Dispose();

    [Fact]
    public async Task A_night_that_is_on_is_requested_from_leave_by_to_the_last_frame_on_the_site_s_clock()
    {
        var (calendar, entry, part) = await Read(TestDrafts.MorningTimeline);
        Assert.Equal("REQUEST", calendar.Method);
        Assert.Equal("REQUEST", part.ContentType.Parameters["method"]);
        // The very minute that the letter says, no second before or after it.
        Assert.Equal(Ines.At(18, 50), At(entry.Start!));
        Assert.Equal(Ines.At(4, 33, 1), At(entry.End!));
        Assert.Equal(("Europe/Madrid", "Europe/Madrid"), (entry.Start!.TzId, entry.End!.TzId));
        Assert.True(entry.DtStamp!.IsUtc);
        // RFC 5545, 3.2.19: what a TZID names must stand in the object.
        Assert.Equal("Europe/Madrid", Assert.Single(calendar.TimeZones).TzId);
        Assert.Equal("CONFIRMED", entry.Status);
        Assert.Contains("Fri 4 Jun 18:50 CEST  Leave home", entry.Description, StringComparison.Ordinal);
        Assert.Equal("mailto:watch@nightwatch.example", entry.Organizer!.Value!.ToString());
        Assert.Equal("mailto:ines@robledo.example", Assert.Single(entry.Attendees).Value!.ToString());
    }

    [Fact]
    public async Task Alarms_ring_at_last_call_and_when_the_heater_goes_on()
    {
        var (_, entry, _) = await Read(TestDrafts.MorningTimeline);
        Assert.Equal(["-PT60M", "PT155M"], entry.Alarms.Select(a => a.Trigger!.Duration.ToString()));
        Assert.All(entry.Alarms, a => Assert.Equal("DISPLAY", a.Action));
        Assert.All(entry.Alarms, a => Assert.False(string.IsNullOrEmpty(a.Description)));
    }

    [Fact]
    public async Task Through_the_letters_of_a_night_the_uid_stays_and_the_sequence_rises()
    {
        var entries = await ReadAll([TestDrafts.Outlook, TestDrafts.MorningTimeline, TestDrafts.WarningOff]);

        Assert.Single(entries.Select(e => e.Entry.Uid).Distinct());
        Assert.Equal([0, 1, 2], entries.Select(e => e.Entry.Sequence));
        Assert.Equal(["REQUEST", "REQUEST", "CANCEL"], entries.Select(e => e.Method));
        Assert.Equal(["TENTATIVE", "CONFIRMED", "CANCELLED"], entries.Select(e => e.Entry.Status));
        Assert.Equal(entries[1].Entry.Start, entries[2].Entry.Start);
        Assert.Empty(entries[2].Entry.Alarms);
    }

    [Fact]
    public async Task A_night_that_is_on_again_comes_back_under_its_uid()
    {
        var entries = await ReadAll(TestDrafts.OffAndBackOn);

        Assert.Single(entries.Select(e => e.Entry.Uid).Distinct());
        Assert.Equal([0, 1, 2], entries.Select(e => e.Entry.Sequence));
        Assert.Equal(["REQUEST", "CANCEL", "REQUEST"], entries.Select(e => e.Method));
        Assert.Equal(["TENTATIVE", "CANCELLED", "CONFIRMED"], entries.Select(e => e.Entry.Status));
    }

    [Fact]
    public async Task A_marginal_outlook_leaves_the_calendar_alone()
    {
        var letter = await writer.WriteAsync(TestDrafts.MarginalOutlook, TestContext.Current.CancellationToken);
        Assert.DoesNotContain(letter.Message.BodyParts, p => p.ContentType.MimeType is "text/calendar" or "application/ics");
    }

    [Fact]
    public async Task Odd_names_stay_inside_their_lines()
    {
        var (_, entry, part) = await Read(
            TestDrafts.MorningTimeline.With(w =>
                w with
                {
                    Subscriber = w.Subscriber with { Name = "He \"of; the: ridge\", X" },
                    Site = w.Site with { Name = "A;b,c\\d\r\nBEGIN:VALARM 🌌 " + new string('é', 200) },
                }));
        Assert.Contains("A;b,c\\d BEGIN:VALARM 🌌", entry.Location, StringComparison.Ordinal);
        Assert.Equal("He 'of; the: ridge', X", Assert.Single(entry.Attendees).CommonName);
        Assert.Equal(2, entry.Alarms.Count);
        Assert.All(
            part.Text.ReplaceLineEndings("\n").Split('\n'),
            line => Assert.True(System.Text.Encoding.UTF8.GetByteCount(line) <= 75, line)); // RFC 5545, 3.1
    }

    private async Task<List<(string Method, CalendarEvent Entry)>> ReadAll(IEnumerable<LetterDraft> drafts)
    {
        var entries = new List<(string Method, CalendarEvent Entry)>();
        foreach (var draft in drafts)
        {
            var (calendar, entry, _) = await Read(draft);
            entries.Add((calendar.Method!, entry));
        }

        return entries;
    }

    private async Task<(Ical.Net.Calendar Calendar, CalendarEvent Entry, TextPart Part)> Read(LetterDraft draft)
    {
        var letter = await writer.WriteAsync(draft, TestContext.Current.CancellationToken);
        var part = letter.Message.BodyParts.OfType<TextPart>().Single(p => p.ContentType.MimeType == "text/calendar");
        var calendar = Ical.Net.Calendar.Load(part.Text)!;
        return (calendar, Assert.Single(calendar.Events), part);
    }

    private static Instant At(Ical.Net.DataTypes.CalDateTime time) => Instant.FromDateTimeUtc(time.AsUtc);
}
