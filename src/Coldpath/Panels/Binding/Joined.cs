namespace Coldpath.Panels.Binding;

/// <summary>What the wires and chains of a panel come to.</summary>
/// <param name="Conductors">Which conductors arrive where.</param>
/// <param name="Nets">In the order of devices and terminals, then of nodes.</param>
/// <param name="Bonds">Wires to the earth.</param>
/// <param name="Chains">In the order of the text.</param>
internal sealed record Joined(
    ConductorNames Conductors,
    NetBook Nets,
    IReadOnlyList<Bond> Bonds,
    IReadOnlyList<Chain> Chains
);
