namespace NightWatch.Pages.SignUp;

/// <summary>The front page.</summary>
/// <param name="IsOpen">The reader may set up a watch: anybody may, or they are signed in.</param>
/// <param name="Typed">What was typed before.</param>
/// <param name="Why">What is wrong with it; null: nothing.</param>
/// <param name="Choices">Places of that name.</param>
public sealed record FrontModel(bool IsOpen, string Typed, string? Why, IReadOnlyList<PlaceChoice> Choices);
