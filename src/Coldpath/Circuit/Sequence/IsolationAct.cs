using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>One thing to do to make a part dead.</summary>
/// <param name="Name">The device's tag, or the stored source's name.</param>
/// <param name="Device">What is taken out; null when a stored source is discharged or blocked instead.</param>
/// <param name="Store">What is discharged or blocked; null for a device.</param>
public sealed record IsolationAct(string Name, NetlistDevice? Device, Store? Store);

/// <summary>How something stays live.</summary>
/// <param name="State">An assignment of the panel's own variables.</param>
/// <param name="Done">The acts done in it: those that were given, and perhaps others.</param>
public sealed record Survival(State State, IReadOnlyList<string> Done);
