using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Watchkeeping.Passes;
using NodaTime;

namespace NightWatch.Service.Rehearsal;

/// <summary>One letter as the diary keeps it.</summary>
/// <param name="At">When it was written.</param>
/// <param name="Letter">The letter.</param>
/// <param name="Draft">What it was written from.</param>
internal sealed record DiaryLetter(Instant At, Letter Letter, LetterDraft Draft)
{
    public LetterKind Kind => Letter.Kind;

    public string Subject => Letter.Message.Subject ?? "";

    public string MessageId => Letter.Message.MessageId ?? "";
}

/// <summary>Keeps what was written, in order.</summary>
internal sealed class Diary : IPassWitness
{
    private readonly List<DiaryLetter> letters = [];

    public IReadOnlyList<DiaryLetter> Letters => letters;

    public void Wrote(LetterDraft draft, Letter letter) => letters.Add(new DiaryLetter(draft.Now, letter, draft));
}
