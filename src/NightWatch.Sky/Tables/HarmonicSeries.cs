using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace NightWatch.Sky.Tables;

/// <summary>A sum of terms amplitude × sin(phase), each phase a polynomial of time.</summary>
/// <remarks>
/// Four terms go through one vector sine: a lunar position takes 6,775 of them, and a fit of one date takes ten positions.
/// </remarks>
internal sealed class HarmonicSeries
{
    private readonly double[] amplitudes;
    private readonly double[][] phases;

    /// <param name="terms">Amplitude, then the phase's coefficients of rising powers of time, radians; all rows of one length.</param>
    public HarmonicSeries(IReadOnlyList<double[]> terms)
    {
        Count = terms.Count;
        var padded = (Count + 3) / 4 * 4;
        amplitudes = new double[padded];
        phases = new double[Count == 0 ? 1 : terms[0].Length - 1][];
        for (var power = 0; power < phases.Length; power++) phases[power] = new double[padded];
        for (var i = 0; i < Count; i++)
        {
            amplitudes[i] = terms[i][0];
            for (var power = 0; power < phases.Length; power++) phases[power][i] = terms[i][power + 1];
        }
    }

    /// <summary>How many terms.</summary>
    public int Count { get; }

    /// <summary>The sum at a time.</summary>
    public double At(double t)
    {
        var sum = Vector256<double>.Zero;
        for (var i = 0; i < amplitudes.Length; i += 4)
        {
            var phase = Load(phases[^1], i);
            for (var power = phases.Length - 2; power >= 0; power--) phase = phase * t + Load(phases[power], i);
            sum += Load(amplitudes, i) * VectorSine.Of(phase);
        }

        return Vector256.Sum(sum);
    }

    /// <summary>The sum and its rate of change per unit of time.</summary>
    public (double Value, double Rate) WithRateAt(double t)
    {
        var sum = Vector256<double>.Zero;
        var rates = Vector256<double>.Zero;
        var quarterTurn = Vector256.Create(Math.PI / 2);
        for (var i = 0; i < amplitudes.Length; i += 4)
        {
            var phase = Load(phases[^1], i);
            var rate = Vector256<double>.Zero;
            for (var power = phases.Length - 2; power >= 0; power--)
            {
                rate = rate * t + phase;
                phase = phase * t + Load(phases[power], i);
            }

            sum += Load(amplitudes, i) * VectorSine.Of(phase);
            rates += Load(amplitudes, i) * rate * VectorSine.Of(phase + quarterTurn);
        }

        return (Vector256.Sum(sum), Vector256.Sum(rates));
    }

    private static Vector256<double> Load(double[] values, int index) =>
        Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(values), (nuint)index);
}
