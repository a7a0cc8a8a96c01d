using NightWatch.Planning.SkyBrightness;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Planning.Tests.SkyBrightness.Measured;

/// <summary>A reading beside where Sun and Moon stood.</summary>
internal readonly record struct ModelledReading(MeterReading Reading, double SunAltitudeDeg, MoonSighting Moon)
{
    /// <summary>Where the meter stands, as the headers of its files give it.</summary>
    public static GeoPosition Site { get; } = new(52.2533, -8.3605, 80);

    /// <summary>Readings on both sides of one that make its running median: an hour.</summary>
    private const int HalfAnHour = 6;

    /// <summary>Nearer than this to the running median a curve is smooth: broken cloud moves it by tenths.</summary>
    private const double SmoothMag = 0.06;

    /// <summary>Readings in two hours.</summary>
    private const int TwoHours = 24;

    /// <summary>Brighter twilight is no part of a night's plan.</summary>
    private const double SunBelowDeg = -10;

    /// <summary>
    /// The smooth hours of a night: stretches of two hours at least, with the Sun below −10°, of which every reading is within 0.06 mag of
    /// the median of the hour around it. No model of the sky has a say in it.
    /// </summary>
    public static IReadOnlyList<ModelledReading> Smooth(string name)
    {
        var night = MeterReading.Night(name);
        var sky = new SiteSky(Site, new Interval(night[0].At, night[^1].At));
        var (smooth, stretch) = (new List<ModelledReading>(), new List<ModelledReading>());
        for (var i = HalfAnHour; i < night.Count - HalfAnHour; i++)
        {
            var hour = night.Skip(i - HalfAnHour).Take(2 * HalfAnHour + 1).Select(reading => reading.Mag).Order();
            var sun = sky.SunAt(night[i].At).AltitudeDeg;
            if (sun < SunBelowDeg && Math.Abs(night[i].Mag - hour.ElementAt(HalfAnHour)) <= SmoothMag + 1e-9)
            {
                stretch.Add(new ModelledReading(night[i], sun, sky.MoonAt(night[i].At)));
                continue;
            }

            if (stretch.Count >= TwoHours) smooth.AddRange(stretch);
            stretch.Clear();
        }

        if (stretch.Count >= TwoHours) smooth.AddRange(stretch);
        return smooth;
    }

    /// <summary>Magnitudes by which the sky was measured darker than it is modelled; negative: brighter.</summary>
    public double Darker(SiteSkyGlow glow) => Reading.Mag - SkyLight.At(glow, SkyStep.Zenith, Moon, SunAltitudeDeg).Mag;
}
