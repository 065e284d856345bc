using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Ratings;

/// <summary>The atoms of a declaration, read from the front.</summary>
internal sealed class AtomRow(IReadOnlyList<AtomSyntax> atoms)
{
    public int At { get; set; }

    public bool AtEnd => At >= atoms.Count;

    public AtomSyntax? Ahead(int by = 0) => At + by < atoms.Count ? atoms[At + by] : null;

    public AtomSyntax Take() => atoms[At++];

    /// <summary>From an earlier place to the last atom taken.</summary>
    public Span Since(int start) => atoms[start].Span.Through(atoms[Math.Max(start, At - 1)].Span);

    /// <summary>How many atoms the words of a name take here; 0 when it does not stand here.</summary>
    public int Matches(string name)
    {
        var words = name.Split(' ');
        for (var i = 0; i < words.Length; i++)
            if (WordOf(Ahead(i)) != words[i])
                return 0;
        return words.Length;
    }

    /// <summary>The one of several names that takes most atoms here, the first of equals; null when none stands here.</summary>
    public string? Longest(IEnumerable<string> names) =>
        names.Where(n => Matches(n) > 0).OrderByDescending(Matches).FirstOrDefault();

    /// <summary>A word or a number as written, "10A" too; null for anything else.</summary>
    public static string? WordOf(AtomSyntax? atom) =>
        atom switch
        {
            WordAtom word => word.Text,
            NumberAtom number => number.Text,
            QuantityAtom { Span.Text: var text } when !text.Contains(' ') => text,
            _ => null,
        };
}
