using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Notation;

/// <summary>What reading a source gave: always a tree, and what there is to say about it.</summary>
/// <param name="Findings">In the order of the text; empty when everything was understood.</param>
public sealed record ParseResult(PanelSyntax Panel, IReadOnlyList<Finding> Findings);
