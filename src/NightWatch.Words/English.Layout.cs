using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Outcomes;
using NodaTime;

namespace NightWatch.Words;

// Headings, links and the sentences that stand in every letter and on every night's page.
public sealed partial class English
{
    /// <inheritdoc/>
    public string Tag => "en";

    /// <inheritdoc/>
    public string StoodDown => "STOOD DOWN";

    /// <inheritdoc/>
    public string WhyAsked => "Your answer is held against the forecast; from it the next chances are told better.";

    /// <inheritdoc/>
    public string AnswerOnPage => "Say below what it was really like: from it the next chances are told better.";

    /// <inheritdoc/>
    public string AnswerBelow => "Choose one answer below.";

    /// <inheritdoc/>
    public string AnswerByReply => "Reply to this letter with one word: clear, partly, cloudy or wet-lens.";

    /// <inheritdoc/>
    public string NothingToDo => "Nothing to do; this letter takes the night out of your calendar.";

    /// <inheritdoc/>
    public string WholeNight => "The whole night on its page";

    /// <inheritdoc/>
    public string StopLetters => "Stop these letters";

    /// <inheritdoc/>
    public string StopDigest => "Stop the weekly digest";

    /// <inheritdoc/>
    public string Of(LetterPart part) => part switch
    {
        LetterPart.WhatChanged => "What changed",
        LetterPart.InTheField => "In the field",
        LetterPart.WhatIsNew => "New in these letters",
        LetterPart.BeforeAnyNight => "Before any night out",
        LetterPart.NextDarkNights => "Next dark nights, by the sky alone",
        _ => part.ToString(),
    };

    /// <inheritdoc/>
    public string Of(Quantity quantity) => quantity switch
    {
        Quantity.LowCloud => "Low cloud",
        Quantity.MediumCloud => "Medium cloud",
        Quantity.HighCloud => "High cloud",
        Quantity.RainChance => "Chance of rain",
        Quantity.ThunderChance => "Chance of thunder",
        Quantity.DewPoint => "Dew point",
        Quantity.LensMargin => "Lens above its dew point",
        Quantity.HeatedMargin => "With the heater",
        Quantity.LensFront => "Front of the lens",
        Quantity.SubjectAltitude => "Subject, altitude",
        Quantity.SubjectAzimuth => "Subject, azimuth",
        Quantity.MoonAltitude => "Moon, altitude",
        Quantity.MoonAzimuth => "Moon, azimuth",
        Quantity.MoonlightAdded => "Moonlight added",
        Quantity.SunAltitude => "Sun, altitude",
        Quantity.SkyInFrame => "Sky in the frame",
        Quantity.Worth => "Worth of a frame",
        _ => quantity.ToString(),
    };

    /// <inheritdoc/>
    public string Of(PlanPart part) =>
        part switch
        {
            PlanPart.Sky => "Sun by simplified VSOP2000, Moon by ELP/MPP02, topocentric on WGS84; conventions as the sky command's",
            PlanPart.Weather => "The feed's values: instants interpolated to the step, periods by their overlap with it; null is unknown",
            PlanPart.Lens => "As lens.source",
            PlanPart.SkyBrightness => "Clear sky: as skyBrightness.source, with twilight of the Sun's altitude",
            PlanPart.Moonlight => "Krisciunas and Schaefer 1991, PASP 103, 1033",
            PlanPart.Contrast =>
                "Subject's light dimmed by Kasten and Young 1989 air mass over the sky's light, against overhead under a natural sky of " +
                "22.0 mag/arcsec2",
            PlanPart.SkyInFrame => "As skyLevel.source",
            PlanPart.Summary => "Means and extremes of the conditions over the run",
            PlanPart.Timeline =>
                "Each entry's own reason; road, set-up and test times from the watch, packing and sleep by common practice",
            PlanPart.LaterNights => "The same evaluation of later nights with the same answer of the feed",
            _ => throw new ArgumentOutOfRangeException(nameof(part), part, "Accepted: one of the parts of a plan."),
        };

    /// <inheritdoc/>
    public string Of(NightOutcome outcome) => outcome switch
    {
        NightOutcome.Clear => "Clear: I got what I came for",
        NightOutcome.Partly => "Partly: some of it was usable",
        NightOutcome.Cloudy => "Cloud, fog or rain: nothing usable",
        NightOutcome.WetLens => "Clear, but the lens got wet",
        NightOutcome.NotTold => "Not told: too little of the night was seen",
        _ => "I could not go",
    };

    /// <inheritdoc/>
    public string Greeting(string name) => $"{name},";

    /// <inheritdoc/>
    public string ToldAs(VerdictClass verdict) => $"TOLD AS {Of(verdict)}";

    /// <inheritdoc/>
    public string ToldBy(SpokenLetter letter, Instant at, Speech speech)
    {
        var by = letter switch
        {
            SpokenLetter.Outlook => "outlook",
            SpokenLetter.MorningTimeline => "morning timeline",
            SpokenLetter.RescheduleWarning => "reschedule warning",
            SpokenLetter.StandDown => "stand-down",
            _ => "letter",
        };
        return $"Told by the {by}, {speech.Clock.Full(at)}";
    }

    /// <inheritdoc/>
    public string TimelineDay(string day, IReadOnlyList<string> zones) => $"{day}, {string.Join(" then ", zones)}";

    /// <inheritdoc/>
    public string Written(Instant at, bool manySites, Speech speech) =>
        $"Written {speech.Clock.WithOffset(at)}. Clock times are local at {(manySites ? "each" : "the")} site.";

    /// <inheritdoc/>
    public IReadOnlyList<string> StandingCautions(bool onPage) =>
        [
            $"This {(onPage ? "page" : "letter")} is guidance, not a warning service. Your {Authorities}; where they say otherwise, " +
            "follow them.",
            "Thunder heard is reason enough to leave rail and tripod and get into a car or a building. Keep clear of water and edges in " +
            "the dark, dress for the coldest hour, and tell someone where you are and when you will be back.",
            "Do not drive tired: sleep first. Keep batteries dry, undamaged and out of reach of frost and heat.",
        ];

    /// <inheritdoc/>
    public string See(string choice) => $"See {choice}";

    /// <inheritdoc/>
    public string SwitchTo(string choice) => $"Switch to {choice}";

    /// <inheritdoc/>
    public string NoMoreLetters(LocalDate evening, Speech speech) => $"No more letters about the night of {speech.Clock.Night(evening)}";

    /// <inheritdoc/>
    public string StopLettersAt(string address) => $"Stop these letters: {address}";

    private const string Authorities = "local weather service, the park and the emergency authorities have the last word";
}
