using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>An element of the netlist with its nets numbered and its guards as diagrams.</summary>
/// <param name="Element">As the netlist has it.</param>
/// <param name="A">The net at its first end; a diode's anode.</param>
/// <param name="B">The net at its other end.</param>
/// <param name="Closed">It conducts.</param>
/// <param name="Leaks">It lets a little through without conducting.</param>
internal sealed record Link(Element Element, int A, int B, Diagram Closed, Diagram Leaks)
{
    public ElementType Type => Element.Type;

    /// <summary>Of the types that join two nets to one potential.</summary>
    public bool IsSolid =>
        Type
            is ElementType.Conductor
                or ElementType.Contact
                or ElementType.Semiconductor
                or ElementType.Thermal
                or ElementType.Fault;
}
