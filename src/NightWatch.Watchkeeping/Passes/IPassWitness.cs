using NightWatch.Letters.Drafts;

namespace NightWatch.Watchkeeping.Passes;

/// <summary>Sees what was written once it is kept. The rehearsal keeps a diary this way; the service needs none.</summary>
internal interface IPassWitness
{
    /// <summary>A letter was queued.</summary>
    void Wrote(LetterDraft draft, Letter letter);
}

/// <summary>Nobody looks.</summary>
internal sealed class NoWitness : IPassWitness
{
    public void Wrote(LetterDraft draft, Letter letter)
    {
    }
}
