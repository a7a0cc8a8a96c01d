namespace NightWatch.Pictures;

/// <summary>The part of a picture across which time runs evenly, from the first step of the grid to the last; logical pixels.</summary>
/// <param name="Width">Of the whole picture.</param>
/// <param name="Height">Of the whole picture.</param>
/// <param name="Left">At the first step.</param>
/// <param name="Right">At the last.</param>
/// <param name="Top">Upper edge of the uppermost strip.</param>
/// <param name="Bottom">Lower edge of the lowest.</param>
public sealed record ChartPlot(double Width, double Height, double Left, double Right, double Top, double Bottom);
