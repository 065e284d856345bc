namespace Coldpath.Circuit.Conduction;

/// <summary>A conducting path: nets from its beginning to its end, and the element or coupling between each two.</summary>
/// <param name="Supply">The supply whose conductor it begins at.</param>
/// <param name="Conductor">That conductor.</param>
/// <param name="Nets">One more than <paramref name="Steps"/>.</param>
/// <param name="Steps">Element ids, or the name of a coupling.</param>
public sealed record ConductingPath(
    string Supply,
    string Conductor,
    IReadOnlyList<string> Nets,
    IReadOnlyList<string> Steps
);
