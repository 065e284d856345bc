using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Symbols;

/// <summary>A part of a device that is drawn in a rung, from its left terminal to its right one.</summary>
/// <param name="Device">For its kind's symbol name, ratings and flags.</param>
/// <param name="Rules">"IEC": IEC 60617 symbols; "NEC": IEEE 315.</param>
/// <param name="Part">The words for it: "coil", "NO", "NC trip", "at", "input run"; empty for what a bare name passes.</param>
/// <param name="Role">What sort of symbol it is.</param>
/// <param name="Positions">Of a selector's contact: where it is closed.</param>
/// <param name="ClosedAtRest">Normally closed.</param>
/// <param name="ClosedNow">In the state that is drawn; equal to <paramref name="ClosedAtRest"/> when none is.</param>
public sealed record ControlPart(
    PlacedDevice Device,
    string Rules,
    string Part,
    ControlRole Role,
    IReadOnlyList<string> Positions,
    bool ClosedAtRest,
    bool ClosedNow
)
{
    /// <summary>Names of its two terminals, lettered beside the leads; empty where they are not to be.</summary>
    public string Left { get; init; } = "";
    public string Right { get; init; } = "";
}

/// <summary>What a part is in a rung, found from its elements and not from its kind's name.</summary>
public enum ControlRole
{
    /// <summary>Moves an armature.</summary>
    Coil,
    Contact,

    /// <summary>Any other end of a line: lamp, horn, input, winding.</summary>
    Load,

    /// <summary>Fuse link, heater, breaker pole and what else is passed.</summary>
    Through,

    /// <summary>A terminal that is only touched.</summary>
    Terminal,
}
