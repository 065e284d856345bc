using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Sequence;

/// <summary>Part of a relation: from each of the source states, the variable takes the value.</summary>
/// <param name="Source">The states it starts from; in each the variable has another value.</param>
/// <param name="Variable">Number of the variable that changes.</param>
/// <param name="To">Number of its new value.</param>
internal readonly record struct Arc(Diagram Source, int Variable, int To);
