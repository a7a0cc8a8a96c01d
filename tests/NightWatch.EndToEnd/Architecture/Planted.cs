// Two folders of a project that is not there, which use each other in every way there is: the test must find all of them.
#pragma warning disable CA1051, CA1052, CA1812, CA1822, CA1823, CA1813, CA1018, CA1852, CA1034, CA1040
#pragma warning disable CA1715, IDE0052, CS0649, CS0169, IDE0130

using NightWatch.Planted.North;

namespace NightWatch.Planted.North
{
    public class Compass
    {
        public South.Needle? Needle { get; set; }
    }

    public interface IPole
    {
    }

    [AttributeUsage(AttributeTargets.Class)]
    public sealed class PointsAttribute(Type? at = null) : Attribute
    {
        public Type? At { get; } = at;
    }

    public enum Wind
    {
        Calm,
    }
}

namespace NightWatch.Planted.South
{
    public sealed class Needle;

    public class ByBase : Compass;

    public class ByInterface : IPole;

    public class ByField
    {
        public Compass? Field;
    }

    public class BySignature
    {
        public void Take(Wind wind) => _ = wind.ToString().Length;
    }

    public class ByGenericArgument
    {
        public IReadOnlyList<Dictionary<string, Compass[]>> Many => [];
    }

    public class ByConstraint<T>
        where T : IPole;

    [Points]
    public class ByMark;

    [System.ComponentModel.TypeConverter(typeof(Compass))]
    public class ByAttributeValue;

    public class ByBody
    {
        public object Make() => new Compass();
    }

    public class ByLambda
    {
        public Func<object> Make => () => new Compass();
    }

    public class ByIterator
    {
        public IEnumerable<object> Each()
        {
            yield return 1;
            yield return typeof(Compass);
        }
    }

    public class ByNested
    {
        private sealed class Inner : Compass;

        public static object Make() => new Inner();
    }

    public class BySwitch
    {
        public int Of(int which, object what)
        {
            switch (which)
            {
                case 0: return 1;
                case 1: return 3;
                case 2: return 7;
                case 3: return 9;
                case 4: return 4;
                default: return what is Compass ? 2 : 0;
            }
        }
    }
}

namespace NightWatch.Planted
{
    public static class Says
    {
        public static string On => "The night is on.";

        public static string Many(int nights) => nights > 1 ? $"{nights} nights may work" : "night.ics";

        public static string Markup(bool isHead) => isHead ? "<p class=\"small foot\">" : "<p>Take a lamp</p>";

        public static string Thrown(string? site) =>
            site ?? throw new ArgumentException($"A site is needed, {site} is none.", nameof(site));
    }
}
