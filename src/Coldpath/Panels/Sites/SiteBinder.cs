using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;
using Coldpath.Panels.Binding;
using Coldpath.Wiring;

namespace Coldpath.Panels.Sites;

/// <summary>Reads the panels that a description includes and resolves what joins them.</summary>
public sealed class SiteBinder
{
    private readonly PanelSyntax syntax;
    private readonly Dictionary<string, (SourceText Source, BoundResult Bound)> files = new(
        StringComparer.Ordinal
    );
    private readonly List<Finding> findings = [];
    private readonly List<SiteMember> members = [];

    private SiteBinder(PanelSyntax syntax) => this.syntax = syntax;

    /// <summary>Whether a description includes panels, and so is one of a site.</summary>
    public static bool IsSite(PanelSyntax panel) =>
        panel.Statements.OfType<IncludeSyntax>().Any(i => i.Tags.Count > 0);

    /// <summary>
    /// No site but findings when anything is wrong with the site or a panel of it. A finding's place lies in the file it
    /// is about.
    /// </summary>
    public static BoundSite Bind(ParseResult parsed, KindLibrary library) =>
        new SiteBinder(parsed.Panel).Make(parsed, library);

    private BoundSite Make(ParseResult parsed, KindLibrary library)
    {
        var first = new Dictionary<string, WordSyntax>(StringComparer.Ordinal);
        foreach (var include in syntax.Statements.OfType<IncludeSyntax>().Where(i => i.Tags.Count > 0))
            Include(include, library, first);
        var own = PanelBinder.Bind(parsed, library, new Neighbours(members));
        IReadOnlyList<SiteJoint> joints = own.Netlist is null
            ? []
            : [.. new SiteJoints(members, findings).Of(own.Panel)];
        Finding[] all = [.. own.Findings, .. findings];
        var isSound = own.Netlist is not null && all.All(f => f.Severity < Severity.Defect);
        return new(own.Panel, isSound ? new Site(own, members, joints) : null, all);
    }

    private void Include(IncludeSyntax include, KindLibrary library, Dictionary<string, WordSyntax> first)
    {
        if (Read(include, library) is not var (source, bound))
            return;
        foreach (var tag in include.Tags)
            if (!first.TryAdd(tag.Text, tag))
                findings.Add(SiteFindings.Twice(tag, first[tag.Text]));
            else
                members.Add(new SiteMember(tag.Text, source, bound, tag.Span));
    }

    private (SourceText, BoundResult)? Read(IncludeSyntax include, KindLibrary library)
    {
        var file = include.Span.Source.Beside(include.Target.Text);
        if (file.Source is not { } source)
        {
            findings.Add(SiteFindings.Unreadable(include, file.Problem));
            return null;
        }
        if (source.Name == syntax.Span.Source.Name)
        {
            findings.Add(SiteFindings.Loop(include, [source.Name, source.Name]));
            return null;
        }
        if (files.TryGetValue(source.Name, out var known))
            return known;
        return files[source.Name] = (source, Bound(include, source, library));
    }

    private BoundResult Bound(IncludeSyntax include, SourceText source, KindLibrary library)
    {
        var parsed = PanelParser.Parse(source);
        if (IsSite(parsed.Panel))
            findings.Add(SiteFindings.Nested(include));
        var bound = PanelBinder.Bind(parsed, library);
        findings.AddRange(bound.Findings);
        return bound;
    }
}
