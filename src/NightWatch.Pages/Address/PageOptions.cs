namespace NightWatch.Pages.Address;

/// <summary>Who may do what on the pages.</summary>
/// <param name="OpenSignUp">Anybody may sign up; false: watches come from the operator's commands.</param>
/// <param name="OperatorKeyFile">File that holds the password of the operator's page; empty: the page is open on this machine alone, and
/// only without a base.</param>
internal sealed record PageOptions(bool OpenSignUp, string OperatorKeyFile);
