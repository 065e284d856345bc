using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary><c>wire 104: F10:2, S0:11, X1:4</c>: terminals joined by one numbered wire.</summary>
/// <param name="Ends">At least one.</param>
public sealed record WireSyntax(WordSyntax Number, IReadOnlyList<RefSyntax> Ends, Span Span)
    : StatementSyntax(Span);

/// <summary><c>untraced X1:7 because "leaves for the pump house"</c>.</summary>
/// <param name="What">At least one.</param>
public sealed record UntracedSyntax(IReadOnlyList<RefSyntax> What, TextSyntax? Because, Span Span)
    : StatementSyntax(Span);

/// <summary><c>seen Q1, F1</c>.</summary>
/// <param name="What">At least one.</param>
public sealed record SeenSyntax(IReadOnlyList<RefSyntax> What, Span Span) : StatementSyntax(Span);

/// <summary><c>from the drawing K1, K3</c>.</summary>
/// <param name="What">At least one.</param>
public sealed record FromDrawingSyntax(IReadOnlyList<RefSyntax> What, Span Span) : StatementSyntax(Span);
