namespace NightWatch.Weather.Feeds;

/// <summary>How much a feed may be asked in a day.</summary>
/// <param name="CallsADay">Its limit.</param>
/// <param name="CallsAnAnswer">What one answer for one place takes of it.</param>
public readonly record struct FeedBudget(int CallsADay, double CallsAnAnswer);
