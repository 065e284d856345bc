using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>
/// Makes devices of the kinds of a library and of the panel's own; devices of one panel with the same kind and ratings
/// share a blueprint, which knows neither tag nor place.
/// </summary>
internal sealed class KindMaking
{
    private readonly KindLibrary library;
    private readonly IReadOnlySet<string> brokenWords;
    private readonly Dictionary<string, Blueprint> alike = new(StringComparer.Ordinal);

    public KindMaking(PanelSyntax panel, KindLibrary standard)
    {
        (library, OfKinds) = standard.With(panel.Statements.OfType<KindSyntax>());
        brokenWords = panel.BrokenWords;
    }

    /// <summary>About the panel's own kinds as such.</summary>
    public IReadOnlyList<Finding> OfKinds { get; }

    public MadeDevice Make(DeclarationSyntax declaration, WordSyntax tag, PanelFacts facts)
    {
        var common = CommonRatings.Split(declaration.Atoms);
        if (library.Find(declaration.KindName) is not { } kind)
            return new MadeDevice(null, common, Unknown(declaration, tag));
        var written = string.Join('\n', common.Rest.Select(a => a.Span.Text).Prepend(kind.KindName));
        if (alike.TryGetValue(written, out var blueprint))
            return new MadeDevice(blueprint, common, []);
        var device = new DeviceDeclaration(tag.Text, common.Rest, declaration.Span);
        var made = KindCompiler.Instantiate(kind, library, device, facts);
        if (made is { Blueprint: { } sound, Findings: [] })
            alike.Add(written, sound);
        return new MadeDevice(made.Blueprint, common, made.Findings);
    }

    /// <summary>Said with the first of several alike; a kind whose own text is broken was reported there.</summary>
    private IReadOnlyList<Finding> Unknown(DeclarationSyntax declaration, WordSyntax tag)
    {
        if (tag != declaration.Tags[0] || declaration.Kind.Any(w => brokenWords.Contains(w.Text)))
            return [];
        var span = declaration.Kind[0].Span.Through(declaration.Kind[^1].Span);
        var remedy = SpellChecker.Nearest(declaration.KindName, library.Names.Concat(LineWords.Statement))
            is { } near
            ? $"did you mean {near}?"
            : "coldpath kinds lists the kinds there are";
        return
        [
            Complaint.UnknownKind.At(span, $"there is no kind \"{declaration.KindName}\"", tag.Text, remedy),
        ];
    }
}
