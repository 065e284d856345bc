using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>What a name in a chain, wire or list speaks of.</summary>
internal abstract record Reading(RefSyntax Syntax);

/// <summary>Nothing that can be used: it was reported, or depends on something that was.</summary>
internal sealed record Unreadable(RefSyntax Syntax) : Reading(Syntax);

/// <summary>A node, rail, numbered wire or the earth.</summary>
internal sealed record NodeReading(RefSyntax Syntax, Pin Pin) : Reading(Syntax);

/// <summary>A device or part of one.</summary>
/// <param name="Device">With a blueprint.</param>
/// <param name="Words">The words around the tag without positions: "coil", "NC trip", "at"; empty when bare.</param>
/// <param name="Positions">After "at"; empty otherwise.</param>
internal sealed record DeviceReading(
    RefSyntax Syntax,
    Declared Device,
    string Words,
    IReadOnlyList<string> Positions
) : Reading(Syntax)
{
    public string Tag => Device.Tag;

    /// <summary>As written, without terminals.</summary>
    public string Name => Syntax.Name;
}
