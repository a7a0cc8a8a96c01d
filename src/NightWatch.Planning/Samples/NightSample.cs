using NightWatch.Planning.Chance;
using NodaTime;

namespace NightWatch.Planning.Samples;

/// <summary>A question that a night answers: is this piece of it usable for somebody who needs so many minutes?</summary>
/// <param name="Piece">The piece of the night.</param>
/// <param name="NeedMin">Usable minutes wanted.</param>
/// <param name="IsWatchs">The watch's own question: the whole of its windows and its own need.</param>
public readonly record struct SampleQuestion(Interval Piece, double NeedMin, bool IsWatchs);

/// <summary>What a look said to a question.</summary>
/// <param name="Question">Its place among the night's questions.</param>
/// <param name="Figures">What was forecast.</param>
public readonly record struct NightSample(int Question, ChanceFigures Figures);
