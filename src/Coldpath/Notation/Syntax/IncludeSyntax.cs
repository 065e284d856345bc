using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary><c>include "pump.panel" as P1, P2</c>: a panel once for each tag. Without tags: a file of kinds.</summary>
public sealed record IncludeSyntax(TextSyntax Target, IReadOnlyList<WordSyntax> Tags, Span Span)
    : StatementSyntax(Span);
