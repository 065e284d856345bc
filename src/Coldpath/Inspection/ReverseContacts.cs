using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;
using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath.Inspection;

/// <summary>A coil that a contact feeds against the direction in which its rung is written.</summary>
/// <param name="Armature">The coil's variable.</param>
/// <param name="Contact">The contact.</param>
/// <param name="States">Where it does.</param>
/// <param name="State">One of them.</param>
public sealed record ReverseContact(Variable Armature, Element Contact, Diagram States, State State);

/// <summary>
/// Rungs run from the supply to the coil and back: a contact carries current from its left to its right as written. It feeds a
/// coil backwards when the feeding conductor comes to its right by another way, and the coil is energised through it alone.
/// </summary>
public static class ReverseContacts
{
    public static IEnumerable<ReverseContact> Of(Evidence evidence)
    {
        var crossings = new Crossings(evidence.Netlist);
        var found = new HashSet<string>();
        foreach (var use in evidence.Panel.PartUses())
            if (
                evidence.Devices.TryElement(IdOf(use)) is { Power: false, Type: ElementType.Contact } contact
                && crossings.IsFedFromBothSides(contact)
            )
                foreach (var reverse in Of(evidence, contact, RightOf(evidence, use)))
                    if (found.Add(reverse.Armature.Device))
                        yield return reverse;
    }

    private static IEnumerable<ReverseContact> Of(Evidence evidence, Element contact, string right)
    {
        var table = evidence.Table;
        var network = evidence.Network;
        var without = network.Without([contact.Id]);
        var fed = table.AnyOf(
            evidence.Supplies.Select(s => without.Reached(right, s.Name, Feeding(s).Name, Grade.Solid))
        );
        var among = table.AllOf(
            evidence.Settled,
            evidence.Intact,
            !evidence.Behaviour.Shorted,
            network.Closed(contact.Id),
            fed
        );
        if (among.IsFalse)
            yield break;
        foreach (var armature in Coils.Armatures(evidence))
        {
            var energised = new Energised(armature.Coil[0], armature.Coil[1], Grade.Solid, 0, null);
            var states = table.AllOf(
                among,
                network.Of(energised),
                !without.Of(energised),
                evidence.Is(armature, "in")
            );
            if (!states.IsFalse && evidence.Behaviour.ShortestTo(states) is { } story)
                yield return new(armature, contact, states, story.End);
        }
    }

    /// <summary>The conductor that current comes from: plus, or the one of the highest voltage to earth, the first of these.</summary>
    private static SupplyConductor Feeding(Supply supply) =>
        supply.Conductors.FirstOrDefault(c => c.Polarity == Polarity.Plus)
        ?? supply.Conductors.MaxBy(c => Math.Abs(c.Volts))!;

    private static string IdOf(PartUse use) => $"{use.Device}.{use.Left}-{use.Right}";

    private static string RightOf(Evidence evidence, PartUse use) =>
        evidence.Netlist.Points.First(p => p.Name == $"{use.Device}:{use.Right}").Net;
}

/// <summary>Where current could come to both sides of a contact, if all others were closed as they like.</summary>
internal sealed class Crossings(Netlist netlist)
{
    private readonly Element[] solid =
    [
        .. netlist.Elements.Where(e => e.Type is not (ElementType.Load or ElementType.Series)),
    ];

    /// <summary>Without it and past no load, a conductor of a supply comes to either side.</summary>
    public bool IsFedFromBothSides(Element contact) =>
        IsFed(contact.A, contact, contact.B) && IsFed(contact.B, contact, contact.A);

    private bool IsFed(string from, Element without, string past)
    {
        var sources = netlist
            .Supplies.Concat(netlist.Converters.Select(c => c.Output))
            .SelectMany(s => s.Conductors)
            .Select(c => c.Net)
            .ToHashSet();
        var reached = new HashSet<string> { from };
        var waiting = new Queue<string>([from]);
        while (waiting.TryDequeue(out var net))
        {
            if (sources.Contains(net))
                return true;
            foreach (var element in solid.Where(e => e != without && (e.A == net || e.B == net)))
            {
                var other = element.A == net ? element.B : element.A;
                if (other != past && reached.Add(other))
                    waiting.Enqueue(other);
            }
        }
        return false;
    }
}
