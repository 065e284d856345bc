using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Panels;

/// <summary>What binding gave.</summary>
/// <param name="Panel">As far as it was understood.</param>
/// <param name="Netlist">Null when there is any finding: a panel half understood is not searched.</param>
/// <param name="Findings">Of reading and binding, in the order of the text.</param>
public sealed record BoundResult(Panel Panel, Netlist? Netlist, IReadOnlyList<Finding> Findings);
