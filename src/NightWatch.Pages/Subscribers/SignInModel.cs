namespace NightWatch.Pages.Subscribers;

/// <summary>The page that asks for an address.</summary>
/// <param name="Typed">What was typed before.</param>
/// <param name="Why">What is wrong with it; null: nothing.</param>
public sealed record SignInModel(string Typed, string? Why);
