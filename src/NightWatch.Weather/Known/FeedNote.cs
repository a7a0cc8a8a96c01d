namespace NightWatch.Weather.Known;

/// <summary>Why a feed gave nothing.</summary>
/// <param name="FeedId">The feed.</param>
/// <param name="Why">One sentence.</param>
/// <param name="OperatorMustAct">It will not mend itself.</param>
public sealed record FeedNote(string FeedId, string Why, bool OperatorMustAct);
