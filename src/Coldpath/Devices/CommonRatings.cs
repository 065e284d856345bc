using Coldpath.Notation.Syntax;

namespace Coldpath.Devices;

/// <summary>What every device may say whatever its kind, split off from the ratings that its kind reads.</summary>
/// <param name="Place">The text after <c>in</c>; null when not said.</param>
/// <param name="Standby">Stays open when the panel is powered.</param>
/// <param name="Seen">The writer has looked at it.</param>
/// <param name="FromDrawing">The writer knows it from the drawing only.</param>
/// <param name="Rest">All other atoms, in order.</param>
public sealed record CommonRatings(
    TextAtom? Place,
    bool Standby,
    bool Seen,
    bool FromDrawing,
    IReadOnlyList<AtomSyntax> Rest
)
{
    private static readonly string[] FromTheDrawing = ["from", "the", "drawing"];

    public static CommonRatings Split(IReadOnlyList<AtomSyntax> atoms)
    {
        var (place, standby, seen, drawn) = (default(TextAtom), false, false, false);
        var rest = new List<AtomSyntax>();
        for (var i = 0; i < atoms.Count; i++)
            if (IsWord(atoms, i, "in") && i + 1 < atoms.Count && atoms[i + 1] is TextAtom text)
                (place, i) = (text, i + 1);
            else if (IsWord(atoms, i, "standby"))
                standby = true;
            else if (IsWord(atoms, i, "seen"))
                seen = true;
            else if (IsFromDrawing(atoms, i))
                (drawn, i) = (true, i + FromTheDrawing.Length - 1);
            else
                rest.Add(atoms[i]);
        return new CommonRatings(place, standby, seen, drawn, rest);
    }

    private static bool IsFromDrawing(IReadOnlyList<AtomSyntax> atoms, int at)
    {
        foreach (var word in FromTheDrawing)
            if (!IsWord(atoms, at++, word))
                return false;
        return true;
    }

    private static bool IsWord(IReadOnlyList<AtomSyntax> atoms, int at, string word) =>
        at < atoms.Count && atoms[at] is WordAtom found && found.Text == word;
}
