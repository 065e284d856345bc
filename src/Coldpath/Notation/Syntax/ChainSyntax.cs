using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary><c>MAINS -> Q1 -> ( K1 | K3 ) -> M1</c>, or the same as a rung.</summary>
/// <param name="Rung">The number after <c>rung</c>; null for a chain.</param>
/// <param name="Steps">At least two, joined by <c>-></c>.</param>
public sealed record ChainSyntax(WordSyntax? Rung, IReadOnlyList<StepSyntax> Steps, Span Span)
    : StatementSyntax(Span);

/// <summary>What stands between two arrows.</summary>
public abstract record StepSyntax(Span Span) : SyntaxNode(Span);

/// <summary><c>( a | b )</c>: parallel branches, at least one; a bracket without a bar has one branch.</summary>
public sealed record GroupSyntax(IReadOnlyList<BranchSyntax> Branches, Span Span) : StepSyntax(Span);

/// <summary>One branch of a group: a chain of at least one step.</summary>
public sealed record BranchSyntax(IReadOnlyList<StepSyntax> Steps, Span Span) : SyntaxNode(Span);

/// <summary>
/// A device, a part of one, or a node: <c>K1</c>, <c>coil K1</c>, <c>NC U1 trip</c>, <c>S1 at HAND or AUTO</c>,
/// <c>node 100</c>, <c>T1:X1</c>, <c>MAINS[L1, L2, L3]</c>.
/// </summary>
/// <param name="Words">In order, at least one; the "or" of "HAND or AUTO" is among them.</param>
/// <param name="Terminals">What it is narrowed to; null when nothing is said.</param>
public sealed record RefSyntax(IReadOnlyList<WordSyntax> Words, TerminalsSyntax? Terminals, Span Span)
    : StepSyntax(Span)
{
    /// <summary>The words with single spaces, without terminals.</summary>
    public string Name => string.Join(' ', Words);
}

/// <summary><c>:95-96</c> or <c>[L1, L2]</c>.</summary>
/// <param name="Names">Exactly one after a colon, at least one in brackets; "95-96" and "1/L1" are one name each.</param>
/// <param name="InBrackets">Whether they stood in brackets.</param>
public sealed record TerminalsSyntax(IReadOnlyList<WordSyntax> Names, bool InBrackets, Span Span)
    : SyntaxNode(Span);
