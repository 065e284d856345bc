using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings;

/// <summary>What a drawing is to show beyond the wiring.</summary>
public abstract record ShowRequest;

/// <summary>The state after operations.</summary>
/// <param name="FromRest">Every isolator open; else powered.</param>
public sealed record ShowState(IReadOnlyList<Operation> Operations, bool FromRest) : ShowRequest;

/// <summary>What <c>check</c> finds under a code or name.</summary>
public sealed record ShowFinding(string Name) : ShowRequest;
