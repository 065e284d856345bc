using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary>A line of the header: each form may stand once, at the top; the binder says so when not.</summary>
public abstract record HeaderSyntax(Span Span) : StatementSyntax(Span);

/// <summary><c>panel "Quarry dewatering, pump 3"</c>, or <c>site "North quarry"</c>.</summary>
public sealed record PanelNameSyntax(TextSyntax Name, Span Span) : HeaderSyntax(Span);

/// <summary><c>drawing QD-31 revision B</c>.</summary>
/// <param name="Number">The drawing's number, one or more words.</param>
public sealed record DrawingSyntax(IReadOnlyList<WordSyntax> Number, WordSyntax? Revision, Span Span)
    : HeaderSyntax(Span);

/// <summary><c>rules NEC</c>; any word is let through here.</summary>
public sealed record RulesSyntax(WordSyntax Rules, Span Span) : HeaderSyntax(Span);

/// <summary><c>system 480 V 3-phase 60 Hz, solidly earthed wye</c>.</summary>
public sealed record SystemSyntax(IReadOnlyList<AtomSyntax> Atoms, Span Span) : HeaderSyntax(Span);
