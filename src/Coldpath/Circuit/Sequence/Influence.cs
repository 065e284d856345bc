using Coldpath.Circuit.Diagrams;

namespace Coldpath.Circuit.Sequence;

/// <summary>A guard by which variables decide what is live.</summary>
/// <param name="Condition">Over the variables.</param>
/// <param name="Helps">More is live, or as much, when it holds; else its every value may matter.</param>
internal sealed record Influence(Diagram Condition, bool Helps);
