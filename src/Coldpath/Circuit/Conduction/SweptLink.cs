using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Conduction;

/// <summary>A link of a graph that is swept.</summary>
/// <param name="A">One end.</param>
/// <param name="B">The other.</param>
/// <param name="Condition">When it is there; neither true nor false.</param>
/// <param name="First">The number of the first level that it depends on, among those that any link does.</param>
/// <param name="Last">The number of the last one.</param>
internal sealed record SweptLink(int A, int B, Diagram Condition, int First, int Last);
