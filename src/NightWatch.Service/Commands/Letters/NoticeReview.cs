using NightWatch.Letters;
using NightWatch.Letters.Notices;
using NightWatch.Planning.Watches;
using NightWatch.Service.Settings;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Passes;
using NodaTime;

namespace NightWatch.Service.Commands.Letters;

/// <summary>
/// The letters that are about no single night, as a watch's subscriber would get them. Their links open nothing: no token is kept.
/// </summary>
internal static class NoticeReview
{
    private const string Digest = "digest";
    private const string Confirmation = "confirmation";
    private const string SignIn = "sign-in";

    public static IReadOnlyList<string> Kinds { get; } = [Digest, Confirmation, SignIn];

    public static async Task<ReviewLetter> WriteAsync(
        ServiceProvider parts, string kind, Watch watch, ServiceOptions service, Instant now, CancellationToken stop)
    {
        var writer = parts.GetRequiredService<LetterWriter>();
        var (to, zone, link) = (
            watch.Subscriber.Address, watch.Site.Zone, new Uri(writer.Head.PagesBase ?? service.ListensAt, "#for-review-only"));
        var notice = kind switch
        {
            Digest => await writer.WriteDigestAsync(
                await parts
                    .GetRequiredService<DigestPass>()
                    .DraftAsync(watch, parts.GetRequiredService<ForecastSource>().BeginPass(stop), now, stop),
                stop),
            Confirmation => await writer.WriteConfirmationAsync(
                new ConfirmationDraft(to, link, now, now + ConfirmationDraft.Valid) { Place = watch.Site.Position, Zone = zone }, stop),
            _ => await writer.WriteSignInAsync(new SignInDraft(to, link, now, now + SignInDraft.Valid) { Zone = zone }, stop),
        };
        return new(notice.Message, notice.Html, notice.Text);
    }
}
