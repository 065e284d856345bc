using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>Supplies, isolators, protection and loads.</summary>
internal sealed partial class RandomPanels
{
    private string[] MainSupply()
    {
        var present = Present("MAINS");
        var earthing = sketch.Pick(
            "wye",
            "wye",
            "wye",
            "corner",
            "high leg",
            "resistance",
            "unearthed",
            "two wire",
            "direct"
        );
        return Supply("MAINS", "A", present, earthing, 230);
    }

    /// <summary>A supply process that may be lost, now and then.</summary>
    private Expression Present(string name)
    {
        if (!sketch.Chance(0.25) || !sketch.Affords(2))
            return Expression.True;
        var variable = PanelSketch.TwoValued(
            $"{name}.present",
            VariableKind.Supply,
            "yes",
            "no",
            Mover.Process,
            Mover.Process
        );
        return PanelSketch.Is(sketch.Add(variable), "yes");
    }

    private string[] Supply(string name, string group, Expression present, string earthing, double volts)
    {
        var count =
            earthing is "two wire" or "direct" ? 2
            : earthing is "wye" or "high leg" ? 4
            : 3;
        var nets = sketch.NewNets(count);
        sketch.Supplies.Add(
            new()
            {
                Name = name,
                Direct = earthing == "direct",
                Present = present,
                Group = group,
                ExtraLow = volts < 50,
                Limited = sketch.Chance(0.1),
                Conductors = [.. Conductors(earthing, volts).Zip(nets, (c, net) => c with { Net = net })],
            }
        );
        Bond(name, earthing, nets);
        return nets;
    }

    private static SupplyConductor[] Conductors(string earthing, double volts)
    {
        SupplyConductor Phase(string name, double v, double degrees) =>
            new(name, "", v, degrees, Polarity.Alternating, Expression.True);
        SupplyConductor Pole(string name, double v, Polarity polarity) =>
            new(name, "", v, 0, polarity, Expression.True);
        return earthing switch
        {
            "wye" =>
            [
                Phase("L1", volts, 0),
                Phase("L2", volts, -120),
                Phase("L3", volts, 120),
                Phase("N", 0, 0),
            ],
            "high leg" =>
            [
                Phase("L1", volts / 2, 0),
                Phase("L2", volts / 2 * Math.Sqrt(3), -90),
                Phase("L3", volts / 2, 180),
                Phase("N", 0, 0),
            ],
            "two wire" => [Phase("L", volts, 0), Phase("N", 0, 0)],
            "direct" => [Pole("+", volts, Polarity.Plus), Pole("-", 0, Polarity.Minus)],
            _ => [Phase("L1", volts, 0), Phase("L2", volts, -120), Phase("L3", volts, 120)],
        };
    }

    private void Bond(string name, string earthing, string[] nets)
    {
        if (earthing == "unearthed" || earthing is "two wire" or "direct" && sketch.Chance(0.3))
            return;
        var whole = Expression.True;
        if (sketch.Chance(0.25) && sketch.Affords(2))
            whole = Expression.Negate(Failed($"{name}.bond", FailureClass.Wiring));
        var type = earthing == "resistance" ? ElementType.Series : ElementType.Conductor;
        var net = earthing == "corner" ? nets[1] : nets[^1];
        sketch.Add($"{name}.bond", type, net, PanelSketch.Earth, whole);
    }

    private VariableIs Failed(string name, FailureClass failure)
    {
        var variable = PanelSketch.TwoValued(
            sketch.Name($"{name}.x"),
            VariableKind.Failure,
            "no",
            "yes",
            Mover.Failure,
            null,
            failure
        );
        return PanelSketch.Is(sketch.Add(variable), "yes");
    }

    private string[] Isolated(string[] nets, string prefix)
    {
        if (!sketch.Chance(0.8) || !sketch.Affords(2))
            return nets;
        var name = sketch.Name(prefix);
        sketch.Add(
            PanelSketch.TwoValued(
                name,
                VariableKind.Position,
                "open",
                "closed",
                Mover.Operator,
                Mover.Operator
            )
        );
        sketch.Powered.Add(new(name, "closed"));
        // Most isolators leave a neutral alone; some open it, and then what hung on it floats.
        var poles = nets.Length == 4 && sketch.Chance(0.5) ? nets[..3] : nets;
        var ids = new List<string>();
        var to = sketch.Poles(name, ElementType.Contact, poles, PanelSketch.Is(name, "closed"), ids);
        sketch.Devices.Add(
            new()
            {
                Tag = name,
                Kind = "disconnect",
                Isolates = new(name, ids, Lockable: true, Visible: true, Rank: 1),
            }
        );
        return [.. to, .. nets[poles.Length..]];
    }

    private string[] Protected(string[] nets)
    {
        if (!sketch.Chance(0.5) || !sketch.Affords(2))
            return nets;
        var name = sketch.Name("F");
        sketch.Add(
            PanelSketch.TwoValued(name, VariableKind.Position, "on", "off", Mover.Operator, Mover.Operator)
        );
        var ids = new List<string>();
        var poles = nets.Length == 4 ? nets[..3] : nets;
        var to = sketch.Poles(name, ElementType.Thermal, poles, PanelSketch.Is(name, "on"), ids);
        sketch.Devices.Add(
            new()
            {
                Tag = name,
                Kind = "breaker",
                OpensOnShort = [new(name, "off", ids, 10)],
                Isolates = sketch.Chance(0.5) ? new(name, ids, true, false, 2) : null,
            }
        );
        return [.. to, .. nets[poles.Length..]];
    }

    private void SecondSupply(string[] bus)
    {
        var synchronised = sketch.Chance(0.35);
        var kind = bus.Length switch
        {
            2 => "two wire",
            3 => sketch.Pick("unearthed", "corner"),
            _ => "wye",
        };
        var nets = Supply(
            "GEN",
            synchronised ? "A" : "B",
            Present("GEN"),
            kind,
            sketch.Pick(230.0, 230.0, 120.0)
        );
        var from = Isolated(nets, "Q");
        var closed = contactors.Count > 0 ? sketch.Pick<Contactor>(contactors).In : Expression.True;
        var poles = Math.Min(from.Length, sketch.Pick(1, 2, 3, 4));
        var to = bus.Length == from.Length ? bus : bus[..poles];
        sketch.Poles(
            "TIE",
            ElementType.Contact,
            from[..Math.Min(poles, to.Length)],
            to[..Math.Min(poles, to.Length)],
            closed
        );
    }

    private void Motor(string[] ends, string name)
    {
        if (ends.Length == 2)
            TwoWireLoad(ends, name);
        else if (sketch.Chance(0.5))
            Winding(ends, name, star: true);
        else
            Winding(ends, name, star: false);
    }

    private void TwoWireLoad(string[] ends, string name)
    {
        var element = sketch.Add(name, ElementType.Load, ends[0], ends[1]);
        sketch.Loads.Add(
            new()
            {
                Name = name,
                Elements = [element.Id],
                Terminals = ends,
                Modes = [new("on", null, ends, [], [], sketch.Pick(Turning.Any, Turning.Forward))],
            }
        );
    }

    private void Winding(string[] ends, string name, bool star)
    {
        var point = star ? sketch.Net() : null;
        var elements = ends.Select(
                (end, i) =>
                    sketch.Add(name, ElementType.Load, end, point ?? ends[(i + 1) % 3], WindingWhole(name))
            )
            .ToArray();
        sketch.Loads.Add(
            new()
            {
                Name = name,
                Elements = [.. elements.Select(e => e.Id)],
                Terminals = point is null ? ends : [.. ends, point],
                Modes = [new(star ? "star" : "delta", 1450, ends, [], [], Turning.Forward)],
            }
        );
    }

    private Expression WindingWhole(string name) =>
        sketch.Chance(0.05) && sketch.Affords(2)
            ? Expression.Negate(Failed($"{name}.w", FailureClass.Coil))
            : Expression.True;

    /// <summary>Six leads: a main contactor, and two that close the far ends to a star or to a delta.</summary>
    private void SixLeadMotor(string[] near, string[] bus, Expression star, Expression delta, string name)
    {
        var far = sketch.NewNets(3);
        var elements = near.Zip(far, (u, x) => sketch.Add(name, ElementType.Load, u, x)).ToArray();
        sketch.Poles("KD", ElementType.Contact, [bus[1], bus[2], bus[0]], far, delta);
        sketch.Add("KY", ElementType.Contact, far[0], far[1], star, power: true);
        sketch.Add("KY", ElementType.Contact, far[1], far[2], star, power: true);
        sketch.Loads.Add(
            new()
            {
                Name = name,
                Elements = [.. elements.Select(e => e.Id)],
                Terminals = [.. near, .. far],
                Modes =
                [
                    new("star", 1450, near, [new(far[0], far[1]), new(far[1], far[2])], [], Turning.Forward),
                    new(
                        "delta",
                        1450,
                        near,
                        [new(near[1], far[0]), new(near[2], far[1]), new(near[0], far[2])],
                        [],
                        Turning.Forward
                    ),
                ],
            }
        );
        if (sketch.Chance(0.3))
            sketch.Couplings.Add(
                new(
                    name,
                    [
                        [near[0], far[0]],
                        [near[1], far[1]],
                        [near[2], far[2]],
                    ],
                    false
                )
            );
    }
}
