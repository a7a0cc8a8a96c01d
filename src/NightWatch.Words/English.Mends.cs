using NightWatch.Planning.Reasons;


namespace NightWatch.Words;

// What would mend a reason.
public sealed partial class English
{
    /// <inheritdoc/>
    public string Of(Mend mend, Speech speech) =>
        mend switch
        {
            Mend.Heater { From: { } from } m => $"A dew heater of {speech.OneDecimal(m.Watts)} W, on from {speech.Clock.Time(from)}.",
            Mend.Heater m => $"A heater of {speech.OneDecimal(m.Watts)} W.",
            Mend.HeaterEnergy m => $"{speech.Number(m.Wh)} Wh more for the heater.",
            Mend.Packs m => $"Packs of {speech.Number(m.Wh)} Wh more.",
            Mend.WarmPacks => "Packs kept warm against the body or in an insulated bag, or power from the car.",
            Mend.Card m => $"Another card of at least {speech.Number(m.Gb)} GB, or a longer interval.",
            Mend.OtherAim m => OtherAim(m, speech),
            Mend.LessExposure => "A lower ISO or a shorter exposure from then on.",
            Mend.FirmSpots => "Boots, a ground sheet and a tripod on firm spots; or a day of dry wind and sun.",
            Mend.ShorterRun => "A shorter run accepted, or a date on which the subject is up longer in the dark.",
            Mend.CloudAtMost m => $"Cloud of {speech.Percent(m.Mean)} or less over {speech.Number(m.Minutes)} min, known for all of it.",
            Mend.CloudBelow m => $"Clearer: cloud below {speech.Percent(m.Mean)} for at least {speech.Number(m.Minutes)} min.",
            Mend.FogBelow m => $"Fog on less than {speech.Percent(m.Share)} of the run, or a site above it.",
            Mend.GustsBelow m => $"Gusts below {Speed(m.GustMps, speech)} through the run, or a place in the lee.",
            Mend.MeanWindBelow m => $"A mean wind below {Speed(m.WindMps, speech)}, or a place in the lee.",
            Mend.DryFor m => $"Dry for at least {speech.Number(m.Minutes)} min.",
            Mend.ChanceBelow m => $"A probability below {speech.Percent(m.Probability)} through the run.",
            Mend.MoonDown { Turns.Count: 0 } => "A night nearer new Moon.",
            Mend.MoonDown m =>
                $"A run with the Moon down (it {string.Join(" and ", m.Turns.Select(turn => Turn(turn, speech)))}), or a night nearer " +
                "new Moon.",
            Mend.DarkerSite m => $"A site whose sky at the subject reaches {speech.OneDecimal(m.Mag)} mag/arcsec², or another subject.",
            Mend.OtherDate => "A date on which the subject is up in the dark.",
            Mend.NightWithoutIt => "A night without it, or your own judgement on the spot.",
            Mend.NearerNight m => $"The same forecast {speech.Number(m.AheadH / 24)} days ahead or less.",
            Mend.Knowledge m => Knowledge(m.Of),
            _ => throw new ArgumentOutOfRangeException(nameof(mend), mend, "Accepted: one of the cases of a mend."),
        };

    /// <inheritdoc/>
    public string Also(IReadOnlyList<Factor> factors) => $"Also: {string.Join(", ", factors.Select(Within))}.";

    /// <inheritdoc/>
    public string NothingElse(IReadOnlyList<Factor> unknown)
    {
        ArgumentNullException.ThrowIfNull(unknown);
        return unknown.Count == 0
            ? "Nothing else stands in the way."
            : $"Nothing else stands in the way; not known: {string.Join(", ", unknown.Select(Within))}.";
    }

    /// <inheritdoc/>
    public string WouldHelp(IReadOnlyList<Mend> mends, int moreBelow, Speech speech)
    {
        var phrases = Phrases(mends, speech);
        return moreBelow == 0 ? $"Would help: {phrases}." : $"Would help: {phrases}; {moreBelow} more below.";
    }

    // Sentences as the members of one.
    private string Phrases(IEnumerable<Mend> mends, Speech speech) =>
        string.Join("; ", mends.Select(mend => Of(mend, speech)).Select(sentence => char.ToLowerInvariant(sentence[0]) + sentence[1..^1]));

    private static string Turn(MoonTurn turn, Speech speech) => $"{(turn.Rises ? "rises" : "sets")} at {speech.Clock.Time(turn.At)}";

    private static string OtherAim(Mend.OtherAim m, Speech speech)
    {
        var end = m.End is { } heading ? $"End the move at {Aim(heading, speech)}" : "Choose another heading";
        var start = m.Start is { } at ? $", or start at {speech.Clock.Time(at)}" : "";
        return $"{end}{start}{(m.OrShorter ? ", or keep the sequence to when the subject is in" : "")}.";
    }

    private static string Knowledge(Mend.Missing missing) => missing switch
    {
        Mend.Missing.Forecast => "A forecast for the night.",
        Mend.Missing.Fresh => "A fresh forecast.",
        Mend.Missing.Hourly => "Hourly values, which the feed gives nearer the night.",
        Mend.Missing.Cloud => "A forecast that covers the night, with little cloud in it.",
        Mend.Missing.Dew => "A dew heater, or a forecast with all four.",
        Mend.Missing.Fog => "A forecast of fog or visibility nearer the night.",
        Mend.Missing.Rain => "A forecast of precipitation that covers the run and stays dry.",
        Mend.Missing.RainChance => "A forecast of the probability, or of no precipitation at all.",
        Mend.Missing.Thunder => "A look at your weather service's storm outlook before leaving, or a forecast with thunder in it.",
        Mend.Missing.Wind => "A forecast of wind that covers the run.",
        Mend.Missing.RainBefore => "A record of the last three days' rain and a forecast of it until the night.",
        _ => "Two feeds that agree.",
    };
}
