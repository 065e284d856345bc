using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath.Inspection.Checks;

public sealed class ChannelBridged : Check
{
    public override Card Card { get; } =
        new()
        {
            Code = "L409",
            Name = "channel-bridged",
            Family = Family.ControlLogic,
            Severity = Severity.Defect,
            Title =
                "Two terminals between which a relay looks for an open contact are joined in every state.",
            Why =
                "A channel that never opens leaves the other one alone to stop, and nothing shows when that one fails; a bridged feedback loop hides a welded contactor.",
            Reference = "ISO 13849-1, categories 3 and 4; IEC 60204-1, 9.2",
            Remedy = "wire the contact that belongs between the two terminals",
            Example = new(
                "direct-on-line",
                ["relay                K1    coil 120 V", "rung 3  11  -> NO Q1 -> coil K1 -> 2"],
                [
                    "relay                K1    coil 120 V\nsafety relay         K9    120 V, reset automatic",
                    "rung 3  11  -> NO Q1 -> NO K9 -> coil K1 -> 2\n1 -> supply K9 -> 2\nK9:S11 -> NC S0 -> K9:S12\nK9:S21 -> K9:S22",
                ]
            ),
        };

    public override IEnumerable<Finding> Look(Evidence e)
    {
        var nets = e.Netlist.Points.ToDictionary(p => p.Name, p => p.Net);
        return from device in e.Panel.Devices
            from pair in Watched(device.Blueprint)
            let points = new[] { new Terminal(device.Tag, pair.A), new Terminal(device.Tag, pair.B) }
                .Select(t => t.ToString())
                .ToArray()
            where e.Table.Entails(e.Reachable, e.Network.Joined(nets[points[0]], nets[points[1]]))
            select e.Report(this, [device.Tag])
                .Points(points)
                .Says(
                    $"{Evidence.List(points)} are joined whatever stands how: no contact can open between them"
                )
                .Finding;
    }

    /// <summary>Pairs of terminals that a logic cell asks about, those that the device itself bridges left out.</summary>
    private static IEnumerable<Joined> Watched(Blueprint blueprint) =>
        blueprint
            .Network.Variables.Where(v => v.Kind == VariableKind.Cell)
            .SelectMany(v => v.Moves)
            .SelectMany(m => Pairs(m.When).Concat(Pairs(m.May)))
            .Distinct()
            .Where(p =>
                !blueprint.Network.Elements.Any(e =>
                    e.Type == ElementType.Conductor
                    && (e.A, e.B) is var ends
                    && (ends == (p.A, p.B) || ends == (p.B, p.A))
                )
            );

    private static IEnumerable<Joined> Pairs(Expression condition) =>
        condition switch
        {
            Joined joined => [joined],
            Not not => Pairs(not.Term),
            All all => all.Terms.SelectMany(Pairs),
            Any any => any.Terms.SelectMany(Pairs),
            _ => [],
        };
}
