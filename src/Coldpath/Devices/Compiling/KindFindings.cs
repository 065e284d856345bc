using Coldpath.Findings;

namespace Coldpath.Devices.Compiling;

/// <summary>What there is to say about the text of a kind, each once for each place.</summary>
internal sealed class KindFindings(string kind, string tag)
{
    private readonly List<Finding> findings = [];

    public IReadOnlyList<Finding> InOrder => findings;

    public bool Any => findings.Count > 0;

    public void Unknown(Span at, string what, string name, IEnumerable<string> known) =>
        Add(
            "K001",
            "unknown-name-in-kind",
            at,
            $"'{name}' is no {what} of kind {kind}",
            SpellChecker.Hint(name, known)
        );

    public void UnknownWord(Span at, string what, string word, IReadOnlyList<string> known) =>
        Add(
            "K002",
            "unknown-word-in-kind",
            at,
            $"'{word}' is no {what}",
            SpellChecker.Hint(word, known) ?? $"it is one of {string.Join(", ", known)}"
        );

    public void Twice(Span at, string name) =>
        Add(
            "K003",
            "declared-twice-in-kind",
            at,
            $"kind {kind} declares '{name}' twice",
            "give it another name"
        );

    public void SayAnyOrNo(Span at, string name) =>
        Add(
            "K004",
            "one-of-several-in-kind",
            at,
            $"each pole has its own '{name}'",
            $"write 'any {name}' or 'no {name}', or say it inside 'for each pole'"
        );

    public void NotDecided(Span at) =>
        Add(
            "K005",
            "if-on-state",
            at,
            "'if' is decided before anything moves, and can ask for ratings and flags only",
            "say it in a 'closed when' or in a move"
        );

    public void AsksTheNetwork(Span at) =>
        Add(
            "K006",
            "guard-on-network",
            at,
            "what is closed follows from variables and failures only, so that a state fixes the network",
            "let a variable move by this condition, and ask for that variable"
        );

    public void NegatesTheNetwork(Span at) =>
        Add(
            "K007",
            "converter-not",
            at,
            "the condition of a converter must not deny anything about the network",
            "say what feeds it"
        );

    public void OnlyInPole(Span at, string what) =>
        Add("K008", "outside-pole", at, $"{what} has a meaning only inside 'for each pole'", null);

    public void Dangling(Span at, string net) =>
        Add(
            "K009",
            "dangling-net-in-kind",
            at,
            $"the inner net {net} is met only once, so nothing passes it",
            "inside 'for each pole' an inner net is one for each pole; name it outside to have one for all"
        );

    public void Circular(Span at, string what) =>
        Add("K010", "circular-kind", at, $"{what} goes round in a circle", null);

    public void NoNumber(Span at, string what) =>
        Add(
            "K011",
            "no-number-in-kind",
            at,
            $"{what} has no value here",
            $"give {tag} the rating, or the kind a default"
        );

    public void NoMoves(Span at) =>
        Add("K012", "move-without-variable", at, "a move needs a variable above it", null);

    public void UnknownLike(Span at, string name, IEnumerable<string> known) =>
        Add("K013", "unknown-kind", at, $"there is no kind '{name}'", SpellChecker.Hint(name, known));

    public void InBlock(Span at) =>
        Add(
            "K015",
            "line-in-block",
            at,
            "this line cannot stand inside a block",
            "put it at the top of the kind"
        );

    private void Add(string code, string name, Span at, string message, string? remedy)
    {
        if (findings.Exists(f => f.Code == code && f.Location == at))
            return;
        findings.Add(
            new Finding
            {
                Code = code,
                Name = name,
                Severity = Severity.Defect,
                Message = message,
                Location = at,
                Devices = [tag],
                Remedy = remedy,
            }
        );
    }
}
