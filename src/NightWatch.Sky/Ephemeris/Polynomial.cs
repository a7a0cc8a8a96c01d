using System.Runtime.Intrinsics;

namespace NightWatch.Sky.Ephemeris;

/// <summary>Four quantities as polynomials of one argument from −1 to 1: x, y, z of a body and the sidereal angle, one lane each.</summary>
internal static class Polynomial
{
    /// <summary>The Chebyshev nodes on −1 to 1.</summary>
    public static double[] Nodes(int count)
    {
        var nodes = new double[count];
        for (var i = 0; i < count; i++) nodes[i] = Math.Cos(Math.PI * (i + 0.5) / count);
        return nodes;
    }

    /// <summary>Coefficients of rising powers of the polynomial through samples, by divided differences.</summary>
    public static void Interpolate(
        ReadOnlySpan<double> nodes, ReadOnlySpan<Vector256<double>> samples, Span<Vector256<double>> coefficients)
    {
        Span<Vector256<double>> differences = stackalloc Vector256<double>[nodes.Length];
        samples.CopyTo(differences);
        for (var order = 1; order < nodes.Length; order++)
        {
            for (var i = nodes.Length - 1; i >= order; i--)
                differences[i] = (differences[i] - differences[i - 1]) / (nodes[i] - nodes[i - order]);
        }

        coefficients.Clear();
        for (var i = nodes.Length - 1; i >= 0; i--)
        {
            // coefficients = coefficients * (u - node) + difference
            for (var power = nodes.Length - 1; power > 0; power--)
                coefficients[power] = coefficients[power - 1] - coefficients[power] * nodes[i];
            coefficients[0] = differences[i] - coefficients[0] * nodes[i];
        }
    }

    /// <summary>The values and their rates at an argument.</summary>
    public static void At(ReadOnlySpan<Vector256<double>> coefficients, double u, out Vector256<double> value, out Vector256<double> rate)
    {
        var x = Vector256.Create(u);
        value = coefficients[^1];
        rate = Vector256<double>.Zero;
        for (var power = coefficients.Length - 2; power >= 0; power--)
        {
            rate = Vector256.FusedMultiplyAdd(rate, x, value);
            value = Vector256.FusedMultiplyAdd(value, x, coefficients[power]);
        }
    }
}
