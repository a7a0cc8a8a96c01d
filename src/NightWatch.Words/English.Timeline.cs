using NightWatch.Planning.Nights;

namespace NightWatch.Words;

// What happens when, and why then.
public sealed partial class English
{
    /// <inheritdoc/>
    public string Title(TimelineEntry entry) => entry switch
    {
        TimelineEntry.Arrive { InDaylight: true } => "Arrive and set up by daylight",
        TimelineEntry.DewOnset { IsFrost: true } => "Frost on an unheated lens",
        { Step: var step } => Title(step),
        _ => throw new ArgumentNullException(nameof(entry)),
    };

    /// <inheritdoc/>
    public string? Why(TimelineEntry entry, Speech speech) =>
        entry switch
        {
            TimelineEntry.Nap e =>
                $"Until {speech.Clock.Time(e.Until)}: by the drive home you will have been up about {speech.Number(e.AwakeH)} h without " +
                "it.",
            TimelineEntry.LeaveHome e =>
                $"The drive takes {speech.Number(e.DriveMin)} min; leaving after {speech.Clock.Time(e.Latest)} would cut the run.",
            TimelineEntry.Arrive { InDaylight: true } e => $"Set-up takes {speech.Number(e.SetUpMin)} min and ends before sunset.",
            TimelineEntry.Arrive e =>
                $"Set-up takes {speech.Number(e.SetUpMin)} min and reaches into the dark; take head lamps and know the way back.",
            TimelineEntry.FocusAndTest e => Tests(e, speech),
            TimelineEntry.DriveHome { IsTooLong: true } e =>
                $"You will have been awake about {speech.Number(e.AwakeH)} h. After 17 h people react as with 0.05 % alcohol in the " +
                "blood: sleep there before driving.",
            TimelineEntry.DriveHome e => $"You will have been awake about {speech.Number(e.AwakeH)} h; sleep first if you are tired.",
            TimelineEntry.MoonTurns e => $"The Moon is {speech.Percent(e.LitFraction)} lit.",
            TimelineEntry.SubjectLimit { Clears: true } e => $"It stands above {speech.Number(e.AltitudeDeg)}° and the skyline from here.",
            TimelineEntry.SubjectLimit e => $"It sinks below {speech.Number(e.AltitudeDeg)}° or the skyline.",
            TimelineEntry.SubjectHighest e => $"It culminates at {speech.OneDecimal(e.AltitudeDeg)}°.",
            TimelineEntry.HeaterOn e =>
                $"The bare lens comes within {Apart(e.WithinK, speech)} of its {(e.IsFrost ? "frost" : "dew")} point; " +
                $"{speech.OneDecimal(e.HoldsW)} W hold it.",
            TimelineEntry.DewOnset => "The front element, cooling under the open sky, reaches the point at which air leaves water on it.",
            TimelineEntry.HeaterEmpty e =>
                $"From here the lens is on its own against {(e.IsFrost ? "frost" : "dew")}: change the battery before.",
            TimelineEntry.FirstFrame e =>
                $"{e.Shots} frames of {speech.Number(e.ExposureS)} s every {speech.Number(e.IntervalS)} s play for " +
                $"{speech.Number(e.PlaybackS)} s at {speech.Number(e.PlaybackFps)} frames a second.",
            TimelineEntry.LastFrame e => LastFrame(e, speech),
            TimelineEntry.SkyTooBright e =>
                $"Frame {e.LastSoundShot} is the last sound one: {Word(e.LiftedBy)} lifts the sky past {speech.Percent(e.Limit)} of " +
                "saturation.",
            TimelineEntry.CardFull e => $"The cards of the kit are full after {e.Shots} frames.",
            TimelineEntry.SubjectLeaves e =>
                $"It was in {speech.Percent(e.ShareIn)} of the frames; " +
                $"{(e.IsProgrammed ? "the move ends elsewhere" : "turn the camera after it or stop")}.",
            { Step: var step } => Why(step),
            _ => throw new ArgumentNullException(nameof(entry)),
        };

    private static string Title(TimelineStep step) => step switch
    {
        TimelineStep.Sleep => "Sleep an hour and a half",
        TimelineStep.Pack => "Pack",
        TimelineStep.LeaveHome => "Leave home",
        TimelineStep.Arrive => "Arrive and set up",
        TimelineStep.Sunset => "Sunset",
        TimelineStep.CivilDusk => "Civil dusk",
        TimelineStep.NauticalDusk => "Nautical dusk",
        TimelineStep.FocusAndTest => "Focus and test frames",
        TimelineStep.AstronomicalDusk => "Astronomical dusk",
        TimelineStep.Moonrise => "Moonrise",
        TimelineStep.Moonset => "Moonset",
        TimelineStep.SubjectClear => "Subject clears the skyline",
        TimelineStep.SubjectTransit => "Subject at its highest",
        TimelineStep.SubjectLost => "Subject is lost",
        TimelineStep.HeaterOn => "Dew heater on",
        TimelineStep.Start => "First frame",
        TimelineStep.DewOnset => "Dew on an unheated lens",
        TimelineStep.SwapBattery => "Change the battery",
        TimelineStep.PacksEmpty => "Last pack about empty",
        TimelineStep.SwapCard => "Change the card",
        TimelineStep.HeaterEmpty => "Heater's battery empty",
        TimelineStep.SubjectEntersFrame => "Subject enters the frame",
        TimelineStep.SubjectLeavesFrame => "Subject leaves the frame",
        TimelineStep.LastSoundFrame => "Sky too bright from here",
        TimelineStep.GroundDry => "Ground dry",
        TimelineStep.LastFrame => "Last frame closes",
        TimelineStep.AstronomicalDawn => "Astronomical dawn",
        TimelineStep.NauticalDawn => "Nautical dawn",
        TimelineStep.CivilDawn => "Civil dawn",
        TimelineStep.Sunrise => "Sunrise",
        _ => "Drive home, or sleep first",
    };

    private static string? Why(TimelineStep step) => step switch
    {
        TimelineStep.Pack => "Before the drive, by the list for this night.",
        TimelineStep.GroundDry => "By rain, drainage and drying since; until then use the ground sheet.",
        TimelineStep.SwapBattery => "The pack in use is about empty by its derated energy; change it between two frames.",
        TimelineStep.PacksEmpty => "The packs of the kit end here; one more goes in now, or the frames stop.",
        TimelineStep.SubjectEntersFrame => "Frames before this are without it.",
        TimelineStep.CivilDusk => "The Sun is 6° down; brightest stars show.",
        TimelineStep.NauticalDusk => "The Sun is 12° down; enough stars to focus on.",
        TimelineStep.AstronomicalDusk => "The Sun is 18° down; the sky is dark.",
        TimelineStep.AstronomicalDawn => "The Sun comes within 18° of the horizon; the sky begins to pale.",
        TimelineStep.CivilDawn => "Light enough to see the way.",
        _ => null,
    };

    private static string Tests(TimelineEntry.FocusAndTest e, Speech speech)
    {
        var frames = e is { ExposureS: { } exposure, Iso: { } iso }
            ? string.Create(speech.Language.Culture, $"frames of {exposure:0.###} s at ISO {iso}")
            : "short frames at high ISO";
        var move = e.HasMove ? "step through both ends of the move; " : "";
        return $"Focus on a bright star at full magnification; {frames} for framing and level; {move}then one frame as planned, and look " +
            $"at its histogram and its corners.";
    }

    private static string LastFrame(TimelineEntry.LastFrame e, Speech speech) => e.Cause switch
    {
        LastFrameCause.WishMet => $"The wished {speech.Number(e.WishedPlaybackS ?? 0)} s of playback are in the bag.",
        LastFrameCause.SubjectSinks => "The subject sinks out of its window here.",
        LastFrameCause.MoonRises => "The Moon comes up.",
        LastFrameCause.SkyPales => "The sky pales after this.",
        _ => "The conditions of the run end here.",
    };
}
