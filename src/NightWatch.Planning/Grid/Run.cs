using NodaTime;

namespace NightWatch.Planning.Grid;

/// <summary>A contiguous stretch of the night that may be shot: grid cells, and the exact times clipped to the sky's window.</summary>
/// <param name="First">First cell.</param>
/// <param name="Last">Last cell, included.</param>
/// <param name="Span">Exact times; within the cells and within the dark subject time.</param>
internal readonly record struct Run(int First, int Last, Interval Span)
{
    public int Count => Last - First + 1;
}
