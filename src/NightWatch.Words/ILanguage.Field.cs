using NightWatch.Planning.Camera;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Power;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;

namespace NightWatch.Words;

// What to set and expect in the field.
public partial interface ILanguage
{
    /// <summary>Where the camera points at the first and the last frame.</summary>
    string Aim(FramingPlan framing, Speech speech);

    /// <summary>How the camera moves from frame to frame. The rail is in millimetres for every reader, since that is set on it.</summary>
    string Motion(MotionPlan motion, Speech speech);

    /// <summary>With what to try the exposure.</summary>
    string TestFrames(Sequence sequence, Speech speech);

    /// <summary>How bright the sky comes out at the first and the last frame, and from when it is too bright.</summary>
    string SkyInFrame(SkyLevelPlan level, Speech speech);

    /// <summary>How dark the sky is, and how the subject stands out from it.</summary>
    string DarkSky(SkyBrightnessPlan sky, Speech speech);

    /// <summary>Dew or frost on the front element, the heater against it, and the energy behind the heater.</summary>
    /// <param name="lens">The element.</param>
    /// <param name="kit">Whether the heater has a battery of its own or hangs on the camera's packs.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string Lens(LensPlan lens, Kit kit, Speech speech);

    /// <summary>How wet the ground is, and from when it is dry.</summary>
    string Ground(GroundPlan ground, Speech speech);

    /// <summary>Energy needed and given, and when to change packs.</summary>
    /// <param name="power">The energy.</param>
    /// <param name="packs">How many packs the kit has.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string Batteries(PowerPlan power, int packs, Speech speech);

    /// <summary>When the cards are full; null: they never are.</summary>
    string? CardChange(StoragePlan storage, Speech speech);
}
