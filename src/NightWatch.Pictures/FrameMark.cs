using NodaTime;

namespace NightWatch.Pictures;

/// <summary>The subject in one frame of the move, on <see cref="FrameChart"/>'s picture and in words.</summary>
/// <param name="At">Start of the exposure.</param>
/// <param name="Shot">Number of the frame, from 1.</param>
/// <param name="X">Logical pixels; null: outside of the picture.</param>
/// <param name="Y">The same, downwards.</param>
/// <param name="Says">Time, frame, place in the frame, the camera's heading.</param>
public sealed record FrameMark(Instant At, int Shot, double? X, double? Y, string Says);
