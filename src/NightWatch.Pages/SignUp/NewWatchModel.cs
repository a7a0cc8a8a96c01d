using NightWatch.Pages.Watches;

namespace NightWatch.Pages.SignUp;

/// <summary>The page of a new watch.</summary>
/// <param name="Fields">The form and what is worked out beside it.</param>
/// <param name="SignedIn">Whose session it is; null: nobody is signed in.</param>
public sealed record NewWatchModel(WatchFormModel Fields, string? SignedIn);
