namespace NightWatch.Pages.SignUp;

/// <summary>What is to be confirmed.</summary>
/// <param name="Token">Of the letter.</param>
/// <param name="Name">The place's name.</param>
/// <param name="Place">Its coordinates.</param>
/// <param name="Address">Where letters will go.</param>
public sealed record ConfirmModel(string Token, string Name, string Place, string Address);
