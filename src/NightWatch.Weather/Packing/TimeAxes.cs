using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Weather.Packing;

/// <summary>The rows of times that columns share: most quantities of an answer have the same.</summary>
internal sealed class TimeAxes
{
    private readonly List<long[]> axes = [];

    /// <summary>The place of a row of times in the table, added where it is new.</summary>
    public int PlaceOf(long[] ticks)
    {
        // The newest first: members that miss the same hours follow each other.
        for (var place = axes.Count - 1; place >= 0; place--)
        {
            if (axes[place].AsSpan().SequenceEqual(ticks)) return place;
        }

        axes.Add(ticks);
        return axes.Count - 1;
    }

    public void WriteTo(PackWriter to)
    {
        to.Count(axes.Count);
        foreach (var axis in axes) WriteOne(to, axis);
    }

    /// <summary>All of a table.</summary>
    /// <param name="from">At the table's length.</param>
    /// <param name="most">No row can be longer.</param>
    public static Instant[][] Read(ref PackReader from, int most)
    {
        var axes = new Instant[from.Count(most)][];
        for (var i = 0; i < axes.Length; i++) axes[i] = ReadOne(ref from, most);
        return axes;
    }

    /// <summary>A time by its ticks since 1970.</summary>
    public static Instant At(long ticks) => ticks >= Instant.MinValue.ToUnixTimeTicks() && ticks <= Instant.MaxValue.ToUnixTimeTicks()
        ? Instant.FromUnixTimeTicks(ticks)
        : throw new ForecastFormatException("A kept forecast holds a time that is none.");

    private static void WriteOne(PackWriter to, long[] ticks)
    {
        to.Count(ticks.Length);
        to.Signed(ticks[0]);
        for (var i = 1; i < ticks.Length;)
        {
            var (step, end) = (ticks[i] - ticks[i - 1], i + 1);
            while (end < ticks.Length && ticks[end] - ticks[end - 1] == step) end++;
            to.Count(end - i);
            to.Signed(step);
            i = end;
        }
    }

    private static Instant[] ReadOne(ref PackReader from, int most)
    {
        var times = new Instant[from.Count(most)];
        if (times.Length == 0) throw new ForecastFormatException("A kept forecast holds a row of no times.");
        var ticks = from.Signed();
        times[0] = At(ticks);
        for (var i = 1; i < times.Length;)
        {
            var (end, step) = (i + from.Count(times.Length - i), from.Signed());
            if (end == i) throw new ForecastFormatException("A kept forecast holds a stretch of no times.");
            for (; i < end; i++) times[i] = At(ticks += step);
        }

        return times;
    }
}
