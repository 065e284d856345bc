using Coldpath.Findings;
using Coldpath.Notation.Syntax;
using Coldpath.Panels.Binding;

namespace Coldpath.Panels.Sites;

/// <summary>What can be wrong with including files and joining panels.</summary>
internal static class SiteFindings
{
    private static readonly Complaint IncludeUnreadable = new("P017", "include-unreadable");
    private static readonly Complaint IncludeLoop = new("P018", "include-loop");
    private static readonly Complaint IncludeUnfit = new("P019", "include-unfit");
    private static readonly Complaint SiteTooLarge = new("P022", "site-too-large");
    private static readonly Complaint JointUnfit = new("P020", "joint-unfit");

    public static Finding Unreadable(IncludeSyntax include, string? problem) =>
        IncludeUnreadable.At(
            include.Target.Span,
            $"cannot read {include.Target.Text}: {problem ?? "there is no such file"}",
            remedy: "a file's name is taken from where the description lies that includes it"
        );

    public static Finding Loop(IncludeSyntax include, IReadOnlyList<string> way) =>
        IncludeLoop.At(
            include.Target.Span,
            $"the files include each other in a loop: {string.Join(" → ", way)}"
        );

    public static Finding NotKinds(IncludeSyntax include) =>
        IncludeUnfit.At(
            include.Span,
            $"{include.Target.Text} describes a panel, and what it is called here is not said",
            remedy: $"write include \"{include.Target.Text}\" as TAG"
        );

    public static Finding Nested(IncludeSyntax include) =>
        IncludeUnfit.At(
            include.Span,
            $"{include.Target.Text} includes panels itself, and a site cannot hold another site",
            include.Tags[0].Text,
            "include its panels here, and repeat the lines that join them"
        );

    public static Finding Twice(WordSyntax tag, WordSyntax first) =>
        IncludeUnfit.At(tag.Span, $"there is a panel {tag.Text} already", tag.Text) with
        {
            Related = [new Label(first.Span, "first named here")],
        };

    public static Finding Passed(RefSyntax reference, string tag) =>
        JointUnfit.At(
            reference.Span,
            $"{tag} is a device of another panel, and a chain of the site cannot pass through it",
            tag,
            "wire it in its own panel, and let the chain here begin or end at a terminal of that panel"
        );

    public static Finding NoTerminal(Span span, string terminal, string panel) =>
        JointUnfit.At(
            span,
            $"{terminal} is not used in {panel}, so nothing there is joined by it",
            terminal[..terminal.IndexOf(':', StringComparison.Ordinal)],
            "wire the terminal in the panel's own description first"
        );

    public static Finding TooManyParts(Span span, int parts) =>
        SiteTooLarge.At(
            span,
            $"the site has {parts} parts, and the question does not say which are meant",
            remedy: "name a device of the panel that is meant, as in P1/Q1; check looks at all of them"
        );

    public static Finding HalfFed(SiteMember member, string supply, IReadOnlyList<string> missing) =>
        JointUnfit.At(
            member.Span,
            $"{member.Named(supply)} is fed by the site, but nothing is joined to its {string.Join(", ", missing)}",
            member.Named(supply),
            $"join {string.Join(", ", missing.Select(m => $"{member.Named(supply)}:{m}"))} as well"
        );
}
