using NightWatch.Places;
using NightWatch.Places.Notations;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Watches;

/// <summary>A watch's form and what is worked out beside it.</summary>
/// <param name="Form">The fields.</param>
/// <param name="Near">Zones at and around the place, its own first.</param>
/// <param name="SkyHint">What the sky is taken for where it is not measured.</param>
/// <param name="Ahead">The next dark nights there; null: the place or its zone is not known.</param>
public sealed record WatchFormModel(WatchForm Form, IReadOnlyList<string> Near, string SkyHint, NightsAhead? Ahead)
{
    private const double BorderKm = 15;

    /// <summary>Works out what can be, also from a form that is not complete yet.</summary>
    /// <param name="form">The fields.</param>
    /// <param name="watch">The watch, where the form is right; null: as much of it as is.</param>
    /// <param name="now">The clock reading.</param>
    public static WatchFormModel Of(WatchForm form, Watch? watch, Instant now)
    {
        if (PlaceText.Read(form.Values["place"]) is not PlaceReading.Point point)
            return new WatchFormModel(form, [], Speech.ToAnybody.Language.SkyTaken(zenith: null), null);
        var position = new GeoPosition(point.LatitudeDeg, point.LongitudeDeg);
        var near = ZoneMap.Bundled.Near(point.LatitudeDeg, point.LongitudeDeg, BorderKm);
        // The hours of darkness hang on height by seconds only, so they can be told before it is known.
        var draft = watch ?? Draft(form, position);
        return new WatchFormModel(form, near, BlankWatch.SkyHint(position), draft is null ? null : NightsAhead.Of(draft, now));
    }

    private static Watch? Draft(WatchForm form, GeoPosition position)
    {
        if (ZonesInUse.Instance.GetZoneOrNull(form.Values["site.zone"]) is not { } zone) return null;
        var blank = BlankWatch.At(position.LatitudeDeg, position.LongitudeDeg, "draft");
        var values = new FormValues();
        foreach (
            var name in (string[])
                ["subject.kind", "subject.longitudeDeg", "subject.name", "subject.rightAscensionDeg", "subject.declinationDeg"])
            values[name] = form.Values[name];
        var draft = blank with { Site = blank.Site with { Zone = zone } };
        var limits = draft.Limits with
        {
            MinAltitudeDeg = form.Values.Number("limits.minAltitudeDeg") ?? draft.Limits.MinAltitudeDeg,
            UsableRunMin = form.Values.Number("limits.usableRunMin") ?? draft.Limits.UsableRunMin,
        };
        // A limit that cannot be is told beside its field; the nights are those of the default then.
        return WatchForm.WithSubject(draft with { Limits = limits }, values) ?? WatchForm.WithSubject(draft, values);
    }
}
