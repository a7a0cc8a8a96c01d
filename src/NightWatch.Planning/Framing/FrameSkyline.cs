using NightWatch.Planning.Camera;
using NightWatch.Planning.Directions;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Framing;

/// <summary>The site's skyline as the camera sees it.</summary>
public static class FrameSkyline
{
    /// <summary>Points of the skyline in the frame, left to right for a level camera, one every degree of azimuth.</summary>
    /// <param name="frame">Sensor and lens.</param>
    /// <param name="pose">Where the camera looks.</param>
    /// <param name="horizon">The skyline.</param>
    /// <returns>Points inside the frame and one step beyond its edges.</returns>
    public static IReadOnlyList<FramePoint> Trace(Frame frame, CameraPose pose, HorizonProfile horizon)
    {
        const double beyond = 1.1; // half sides; so that the line reaches the edge in the picture
        var middle = (int)Math.Round(pose.Look(default).AzimuthDeg);
        var points = new List<FramePoint>();
        for (var azimuth = middle - 180; azimuth < middle + 180; azimuth++)
        {
            var turned = (azimuth + 360) % 360;
            var point = pose.Project(new Horizontal(horizon.AltitudeDegAt(turned), turned));
            if (frame.Room(point) >= 1 - beyond) points.Add(point);
        }

        return points;
    }

    /// <summary>Share of the frame below the skyline, 0 to 1; to about a hundredth.</summary>
    /// <param name="frame">Sensor and lens.</param>
    /// <param name="pose">Where the camera looks.</param>
    /// <param name="horizon">The skyline.</param>
    /// <remarks>On 24 by 16 points, of which each fourth column lies level: a level skyline would jump a whole row.</remarks>
    public static double ForegroundShare(Frame frame, CameraPose pose, HorizonProfile horizon)
    {
        const int columns = 24;
        const int rows = 16;
        var (lowest, highest) = horizon.RangeDeg;
        var (lowestUp, highestUp) = (Math.Sin(lowest * Math.PI / 180), Math.Sin(highest * Math.PI / 180));
        var below = 0;
        for (var column = 0; column < columns; column++)
        {
            var x = ((column + 0.5) / columns - 0.5) * frame.WidthMm;
            var offset = 0.125 + 0.25 * (column % 4);
            for (var row = 0; row < rows; row++)
            {
                var point = new FramePoint(x, ((row + offset) / rows - 0.5) * frame.HeightMm);
                var (up, length) = pose.Rise(point);
                // Most points lie below all of the skyline or above all of it; only the others need to know its height there.
                if (up < lowestUp * length || (up < highestUp * length && IsBelow(pose.Sight(point), horizon))) below++;
            }
        }

        return (double)below / (columns * rows);
    }

    private static bool IsBelow(in Direction sight, HorizonProfile horizon)
    {
        var seen = sight.ToHorizontal();
        return seen.AltitudeDeg < horizon.AltitudeDegAt(seen.AzimuthDeg);
    }
}
