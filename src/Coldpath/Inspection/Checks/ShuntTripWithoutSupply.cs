using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class ShuntTripWithoutSupply : FailureCheck
{
    public override Card Card { get; } =
        new()
        {
            Code = "F707",
            Name = "shunt-trip-without-supply",
            Family = Family.Failures,
            Severity = Severity.Danger,
            Title = "What a shunt trip is to open for takes away the shunt trip's own supply.",
            Why =
                "The relay that watches drops and calls for the trip, but the coil has no voltage left: the breaker stays closed, and no test with the supply there shows it.",
            Reference = "IEC 60204-1, 9.4.1; NFPA 79, 9.4.1; common practice",
            Remedy =
                "use an undervoltage release, or feed the shunt trip from a supply that what it watches cannot take away",
            Limits =
                "asked where the load side stays live and the call comes from a contact that the loss itself closes",
            Example = new(
                "shunt-trip",
                [
                    "control supply    EXT       24 V DC, SELV, origin \"battery room\"",
                    "breaker           Q2        32 A, magnetic-only, shunt trip 24 V DC, interrupting 50 kA, in \"starter\"",
                    "EXT[L+] -> F5:1-2 -> rail 3",
                    "EXT[L-] -> F5:3-4 -> rail 4",
                    "fuse              F5        two-pole 1 A, interrupting 50 kA",
                    "rung 2  3 -> NC B1 -> shunt trip Q2 -> 4",
                ],
                [
                    "",
                    "breaker           Q2        32 A, magnetic-only, shunt trip 230 V, interrupting 50 kA, in \"starter\"",
                    "Q0[L1] -> F5 -> rail 3",
                    "",
                    "fuse              F5        1 A, interrupting 50 kA",
                    "rung 2  3 -> NC B1 -> shunt trip Q2 -> N\nwaive race-changes-running on Q1 because \"when power comes it may trip: nobody is hurt\"",
                ]
            ),
        };

    protected override IEnumerable<Finding> Search(Evidence e)
    {
        foreach (var coil in OpeningCoil.All(e))
        foreach (var calls in Calls(e, coil).GroupBy(c => c.Device))
            if (First(e, coil, [.. calls]) is var (loss, states))
                yield return e.Report(this, [coil.Device, calls.Key])
                    .Says(
                        $"when {loss.Words}, {calls.Key} calls for {coil.Device} to open, and its coil at {Terminals(e, coil)} has no voltage to do it with"
                    )
                    .After(loss.Behaviour.ShortestTo(states)!)
                    .Finding;
    }

    private static string Terminals(Evidence e, OpeningCoil coil)
    {
        var element = e
            .Devices.Elements(coil.Device)
            .First(x =>
                x.Type == ElementType.Load
                && coil.Armature.Coil.Contains(x.A)
                && coil.Armature.Coil.Contains(x.B)
            );
        return e.ElementName(element.Id);
    }

    /// <summary>Contacts without which the coil gets no voltage in some state, of devices that move by themselves.</summary>
    private static IEnumerable<Element> Calls(Evidence e, OpeningCoil coil)
    {
        var energised = Energised(e.Network, coil.Armature);
        return e.Netlist.Elements.Where(c =>
            c is { Type: ElementType.Contact, Power: false }
            && Guards.Variables(c.Closed).Any(name => IsOwnMover(e, name))
            && !e
                .Table.Except(
                    e.Table.And(energised, e.Network.Closed(c.Id)),
                    Energised(e.Network.Without([c.Id]), coil.Armature)
                )
                .IsFalse
        );
    }

    private static bool IsOwnMover(Evidence e, string variable) =>
        e.Netlist.Variables.First(v => v.Name == variable).Kind
            is VariableKind.Armature
                or VariableKind.Cell
                or VariableKind.Trip
                or VariableKind.Timer;

    private static Diagram Energised(Network network, Variable armature) =>
        network.Energised(armature.Coil[0], armature.Coil[1], Grade.Solid, 0, null);

    /// <summary>The first loss that makes a contact call and takes the coil its voltage, and the states after it.</summary>
    private static (Loss Loss, Diagram States)? First(Evidence e, OpeningCoil coil, Element[] calls)
    {
        foreach (var loss in LostSupplies.All(e))
        foreach (var call in calls)
            if (Unheard(loss, call, coil, After(e, loss, coil)) is { IsFalse: false } states)
                return (loss, states);
        return null;
    }

    /// <summary>
    /// Of the states those in which the contact calls in vain, while without the loss the coil would have voltage and
    /// what moves the contact would go back.
    /// </summary>
    private static Diagram Unheard(Loss loss, Element call, OpeningCoil coil, Diagram after)
    {
        var (behaviour, table) = (loss.Behaviour, loss.Behaviour.Table);
        var called = table.And(after, behaviour.Network.Closed(call.Id));
        // A wire that may come off gives the coil a net of its own in that search.
        var armature = behaviour.Space.Variables.First(v => v.Name == coil.Armature.Name);
        var heard = loss.WouldBe(called, Energised(behaviour.Network, armature));
        return loss.WouldBe(heard, table.AnyOf(Moved(behaviour, call)));
    }

    private static IEnumerable<Diagram> Moved(Behaviour behaviour, Element call) =>
        from name in Guards.Variables(call.Closed).Distinct()
        from variable in behaviour.Space.Variables.Where(v => v.Name == name)
        from move in variable.Moves
        where move.By == Mover.Settle
        select behaviour.Table.And(behaviour.Space.Is(name, move.From), behaviour.Of(move.When));

    /// <summary>Quiet states after it, isolators closed, in which the device has not opened and its load side is live.</summary>
    private static Diagram After(Evidence e, Loss loss, OpeningCoil coil)
    {
        var (behaviour, table) = (loss.Behaviour, loss.Behaviour.Table);
        return table.AllOf([
            behaviour.ReachableSettled,
            behaviour.Quiet,
            loss.Happened,
            behaviour.Space.Is(coil.Position.Name, coil.Closed),
            table.AnyOf(e.Devices.Poles(coil.Device).Select(p => behaviour.Network.Live(p.B, LiveBy.Solid))),
            .. e.Netlist.Powered.Select(o => behaviour.Space.Is(o.Variable, o.Value)),
        ]);
    }
}
