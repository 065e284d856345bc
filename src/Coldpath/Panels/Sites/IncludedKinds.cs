using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;
using Coldpath.Panels.Binding;

namespace Coldpath.Panels.Sites;

/// <summary>Kinds that a description takes in from files of kinds, and those take in from others.</summary>
internal sealed class IncludedKinds
{
    private readonly HashSet<string> read = new(StringComparer.Ordinal);
    private readonly List<KindSyntax> kinds = [];
    private readonly List<Finding> findings = [];

    /// <summary>The library with those kinds; findings of reading them.</summary>
    public (KindLibrary Library, IReadOnlyList<Finding> Findings) With(KindLibrary library, PanelSyntax panel)
    {
        Take(panel, [panel.Span.Source.Name]);
        if (kinds.Count == 0)
            return (library, findings);
        var (with, taken) = library.With(kinds);
        return (with, [.. findings, .. taken]);
    }

    private void Take(PanelSyntax panel, IReadOnlyList<string> way)
    {
        foreach (var include in panel.Statements.OfType<IncludeSyntax>().Where(i => i.Tags.Count == 0))
            Take(include, way);
    }

    private void Take(IncludeSyntax include, IReadOnlyList<string> way)
    {
        var file = include.Span.Source.Beside(include.Target.Text);
        if (file.Source is not { } source)
            findings.Add(SiteFindings.Unreadable(include, file.Problem));
        else if (way.Contains(source.Name))
            findings.Add(SiteFindings.Loop(include, [.. way, source.Name]));
        else if (read.Add(source.Name))
            Take(include, PanelParser.Parse(source), [.. way, source.Name]);
    }

    private void Take(IncludeSyntax include, ParseResult parsed, IReadOnlyList<string> way)
    {
        findings.AddRange(parsed.Findings);
        if (parsed.Panel.Statements.Any(s => s is not (KindSyntax or IncludeSyntax or BrokenSyntax)))
            findings.Add(SiteFindings.NotKinds(include));
        kinds.AddRange(parsed.Panel.Statements.OfType<KindSyntax>());
        Take(parsed.Panel, way);
    }
}
