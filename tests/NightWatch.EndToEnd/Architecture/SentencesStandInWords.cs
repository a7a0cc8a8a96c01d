using System.Text.RegularExpressions;

namespace NightWatch.EndToEnd.Architecture;

/// <summary>
/// What is said to people is said by NightWatch.Words, so that another language is another class there: in the projects below no
/// literal is a sentence or a piece of one. Only the literals named here are none, and what is thrown, which is for programmers.
/// </summary>
public sealed partial class SentencesStandInWords
{
    /// <summary>Literals of letters that look like sentences: headers and class names.</summary>
    private static readonly string[] OfLetters = ["NightWatch letters <letters.", "small foot", "td now", "time act"];

    /// <summary>Types and folders whose literals no reader is told: the looks; the policy's notes, kept for the operator.</summary>
    private static readonly string[] UnsaidInLetters = ["NightWatch.Letters.Layout.LetterStyles", "NightWatch.Letters.Policy"];

    /// <summary>Project, literals that are no sentences, types and folders that say nothing.</summary>
    public static TheoryData<string, string[], string[]> Projects => new()
    {
        { "NightWatch.Letters", OfLetters, UnsaidInLetters },
    };

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_says_nothing_of_its_own(string project, string[] others, string[] unsaid)
    {
        var said = Sentences(project)
            .Where(literal => !unsaid.Any(name => $"{literal.Type}.".StartsWith($"{name}.", StringComparison.Ordinal))).ToArray();
        var faults = said.Where(literal => !others.Contains(literal.Text))
            .Select(literal => $"{literal.Type} says \"{literal.Text}\"").ToArray();

        Assert.True(faults.Length == 0, string.Join('\n', faults));
        // An entry that no longer stands anywhere goes.
        Assert.Empty(others.Except(said.Select(literal => literal.Text)));
    }

    [Fact]
    public void A_planted_sentence_is_found_and_a_thrown_one_is_not()
    {
        var found = CompiledLiterals.In(typeof(SentencesStandInWords).Assembly.Location)
            .Where(literal => literal.Type.Name == nameof(Planted.Says))
            .Select(literal => literal.Text).Where(IsSentence);

        Assert.Equal(["The night is on.", " nights may work", "<p>Take a lamp</p>"], found);
    }

    [Theory]
    [InlineData("Stay at home.", true)]
    [InlineData(", leave by ", true)]
    [InlineData("Moon: down", true)]
    [InlineData("<h2 class=\"head wide\">Packing list</h2>", true)]
    [InlineData("<style>.page { margin: 0 auto; }</style><p class=\"small foot\">", false)]
    [InlineData("night.ics", false)]
    [InlineData(" | ", false)]
    [InlineData("verdict ", false)]
    public void A_sentence_is_known_by_a_space_between_letters(string literal, bool isOne) => Assert.Equal(isOne, IsSentence(literal));

    private static IEnumerable<CompiledLiteral> Sentences(string project) =>
        CompiledLiterals.In(Path.Combine(AppContext.BaseDirectory, project + ".dll")).Where(literal => IsSentence(literal.Text));

    // Of markup, what stands between the tags.
    private static bool IsSentence(string literal) => BetweenLetters().IsMatch(Markup().Replace(literal, "\n"));

    [GeneratedRegex(@"<style.*?</style>|<[^>]*>", RegexOptions.Singleline)]
    private static partial Regex Markup();

    [GeneratedRegex(@"\p{L}[\p{P}]* [\p{P}]*\p{L}")]
    private static partial Regex BetweenLetters();
}
