namespace Coldpath.Panels;

/// <summary>Terminals joined by wire.</summary>
/// <param name="Name">The first of <paramref name="Names"/>, else its first terminal; "PE" for the earth.</param>
/// <param name="Names">Wire numbers, nodes and rails, in the order they are met.</param>
/// <param name="Terminals">In the order of devices and of their terminals.</param>
public sealed record PanelNet(string Name, IReadOnlyList<string> Names, IReadOnlyList<Terminal> Terminals);
