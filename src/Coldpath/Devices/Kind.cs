using Coldpath.Findings;

namespace Coldpath.Devices;

/// <summary>What a device kind is called and stands for; its behaviour lies in the blueprints made from it.</summary>
/// <param name="Name">"soft starter".</param>
/// <param name="Means">One sentence for the list of kinds.</param>
/// <param name="Letter">IEC 81346-2 letter code.</param>
/// <param name="Symbol">The drawing symbol's name.</param>
/// <param name="Declaration">Where it is written.</param>
public sealed record Kind(string Name, string? Means, string? Letter, string? Symbol, Span Declaration);
