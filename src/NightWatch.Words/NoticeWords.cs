namespace NightWatch.Words;

/// <summary>What a letter about no single night says.</summary>
/// <param name="Subject">The subject line, at most 78 characters.</param>
/// <param name="Headline">What it is.</param>
/// <param name="Says">What it says, the first paragraph the most important.</param>
/// <param name="Button">What its one link says; empty: it has none.</param>
/// <param name="Then">What follows the link.</param>
/// <param name="Foot">When and why it was written.</param>
public sealed record NoticeWords(
    string Subject, string Headline, IReadOnlyList<string> Says, string Button, IReadOnlyList<string> Then, string Foot);
