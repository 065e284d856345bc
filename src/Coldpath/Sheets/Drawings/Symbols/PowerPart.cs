using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath.Sheets.Drawings.Symbols;

/// <summary>The part of a device that is drawn on a power sheet, with the places that its terminals must have.</summary>
/// <param name="Device">For its kind's symbol name, ratings and flags.</param>
/// <param name="Rules">"IEC": IEC 60617 symbols; "NEC": IEEE 315.</param>
/// <param name="Ports">Terminals with their places across; the symbol decides its own height.</param>
/// <param name="Poles">What lies between ports, so that a kind with no symbol of its own can be drawn as well.</param>
/// <param name="OneLine">Several conductors are drawn as one: one port above, one below, at most two of each.</param>
public sealed record PowerPart(
    PlacedDevice Device,
    string Rules,
    IReadOnlyList<PowerPort> Ports,
    IReadOnlyList<Pole> Poles,
    bool OneLine
);

/// <param name="Name">The terminal; in one-line form the group's terminals joined by spaces.</param>
/// <param name="Above">On the line side.</param>
/// <param name="X">Millimetres from the first port, a multiple of 2.5.</param>
/// <param name="Conductors">How many conductors it stands for: 1 in three-line form.</param>
public sealed record PowerPort(string Name, bool Above, double X, int Conductors);

/// <summary>A way through the part from a port to a port.</summary>
/// <param name="From">Index of a port; equal to <paramref name="To"/> for what is only touched.</param>
/// <param name="To">Index of a port.</param>
/// <param name="Types">Of its elements, from the first port to the second.</param>
/// <param name="Closed">As drawn: at rest, or in the state that is drawn.</param>
public sealed record Pole(int From, int To, IReadOnlyList<ElementType> Types, bool Closed)
{
    /// <summary>
    /// Whether each of <see cref="Types"/> is closed, as many as there are. Where it is not given, contacts and
    /// semiconductors are as the pole is, and links are whole unless the pole has nothing else that could be open.
    /// </summary>
    public IReadOnlyList<bool> Each { get; init; } = [];

    /// <summary>The pole as met from its other port.</summary>
    public Pole Turned => new(To, From, [.. Types.Reverse()], Closed) { Each = [.. Each.Reverse()] };

    public bool IsClosed(int element) =>
        Each.Count == Types.Count ? Each[element]
        : Types[element] == ElementType.Thermal ? Closed || Types.Any(IsSwitch)
        : Closed || !IsSwitch(Types[element]);

    private static bool IsSwitch(ElementType type) =>
        type is ElementType.Contact or ElementType.Semiconductor;
}
