using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>An isolator put into one wire of a panel: between an element and the net that it hangs on.</summary>
internal static class SeriesIsolator
{
    private const string Name = "QX";
    private const string Load = "QX:2";

    /// <summary>The panel with it; null when there is no wire that it may go into.</summary>
    /// <param name="netlist">The panel.</param>
    /// <param name="number">Chooses the wire.</param>
    /// <param name="operated">Whether it can be opened; its variable comes last, "closed" the first of its values.</param>
    public static Netlist? Into(Netlist netlist, int number, bool operated)
    {
        var wires = netlist.Elements.Index().Where(e => MayBeCut(netlist, e.Item)).ToArray();
        if (wires.Length == 0)
            return null;
        var (index, cut) = wires[new System.Random(number).Next(wires.Length)];
        Element[] elements = [.. netlist.Elements];
        elements[index] = cut with { A = Load };
        return netlist with
        {
            Nets = [.. netlist.Nets, Load],
            Elements = [.. elements, Pole(cut.A)],
            Variables = [.. netlist.Variables, Position(operated)],
        };
    }

    /// <summary>The net that it hangs on.</summary>
    public static string Line(Netlist netlist) => netlist.Elements.Single(e => e.Device == Name).A;

    /// <summary>What a wire ties to earth must stay a conductor all the way.</summary>
    private static bool MayBeCut(Netlist netlist, Element element) =>
        element.Type != ElementType.Conductor && element.A != netlist.Earth && element.A != element.B;

    private static Element Pole(string line) =>
        new()
        {
            Id = $"{Name}.1-2",
            Device = Name,
            Type = ElementType.Contact,
            A = line,
            B = Load,
            Closed = new VariableIs(Name, "closed"),
        };

    private static Variable Position(bool operated) =>
        new()
        {
            Name = Name,
            Device = Name,
            Kind = VariableKind.Position,
            Values = ["closed", "open"],
            Rest = "closed",
            Moves = operated
                ?
                [
                    new("closed", "open", Mover.Operator, Expression.True, Expression.False),
                    new("open", "closed", Mover.Operator, Expression.True, Expression.False),
                ]
                : [],
        };
}
