using Coldpath.Notation.Syntax;

namespace Coldpath.Notation.Formatting;

/// <summary>Where more than spaces changes.</summary>
/// <param name="Words">What to write for the word that begins at an offset: "480 V" for "480V".</param>
/// <param name="Behind">What to write directly behind the word that ends at an offset: ":13-14".</param>
internal sealed record Rewrites(
    IReadOnlyDictionary<int, string> Words,
    IReadOnlyDictionary<int, string> Behind
)
{
    public static Rewrites Of(PanelSyntax panel, IReadOnlyDictionary<int, string> contactNumbers)
    {
        var atoms = panel.Statements.SelectMany(Atoms).OfType<QuantityAtom>();
        var glued = atoms.Where(IsGlued).ToDictionary(a => a.Span.Start, a => $"{a.Number} {GluedUnit(a)}");
        var references = panel
            .Statements.OfType<ChainSyntax>()
            .SelectMany(chain => chain.Steps)
            .SelectMany(References)
            .Where(r => r.Terminals is null && contactNumbers.ContainsKey(r.Span.Start));
        return new Rewrites(
            glued,
            references.ToDictionary(r => r.Span.End, r => ":" + contactNumbers[r.Span.Start])
        );
    }

    private static IEnumerable<AtomSyntax> Atoms(StatementSyntax statement) =>
        statement switch
        {
            DeclarationSyntax declaration => declaration.Atoms,
            SystemSyntax system => system.Atoms,
            _ => [],
        };

    /// <summary>"480V" is one word of the text, and so is the "480V" of "480V DC".</summary>
    private static bool IsGlued(QuantityAtom atom) =>
        atom.Unit != "%"
        && atom.Span.Text.StartsWith(atom.Number + GluedUnit(atom), StringComparison.Ordinal);

    private static string GluedUnit(QuantityAtom atom) => atom.Unit.Split(' ')[0];

    private static IEnumerable<RefSyntax> References(StepSyntax step) =>
        step switch
        {
            RefSyntax reference => [reference],
            GroupSyntax group => group.Branches.SelectMany(b => b.Steps).SelectMany(References),
            _ => [],
        };
}
