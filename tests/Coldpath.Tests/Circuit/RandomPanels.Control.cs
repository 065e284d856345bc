using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>Control supplies, rungs, contactors, timers, selectors, trips.</summary>
internal sealed partial class RandomPanels
{
    private string? overload;

    private Control ControlSupply(string[] bus)
    {
        var volts = Between(bus[0], bus[1]);
        return sketch.Dice.Next(10) switch
        {
            < 4 when volts > 0 => Transformer(bus, volts),
            < 5 => Separate(),
            _ => new(bus[0], bus[^1], Between(bus[0], bus[^1])),
        };
    }

    /// <summary>Volts between the conductors the two nets stem from, as the main supply declares them.</summary>
    private double Between(string a, string b)
    {
        var (one, other) = (Origin(a), Origin(b));
        return (
            System.Numerics.Complex.FromPolarCoordinates(one.Volts, one.Degrees * Math.PI / 180)
            - System.Numerics.Complex.FromPolarCoordinates(other.Volts, other.Degrees * Math.PI / 180)
        ).Magnitude;
    }

    private SupplyConductor Origin(string net)
    {
        while (sketch.Supplies[0].Conductors.All(c => c.Net != net))
            net = sketch.Elements.First(e => e.B == net).A;
        return sketch.Supplies[0].Conductors.First(c => c.Net == net);
    }

    private Control Transformer(string[] bus, double volts)
    {
        var name = sketch.Name("T");
        var ends = sketch.NewNets(2);
        sketch.Add(name, ElementType.Load, bus[0], bus[1]);
        var direct = sketch.Supplies[0].Direct || sketch.Chance(0.1);
        string[][] windings =
        [
            [bus[0], bus[1]],
            ends,
        ];
        sketch.Converters.Add(
            new()
            {
                Name = name,
                Type = direct ? ConverterType.Rectifier : ConverterType.Transformer,
                Inputs = [bus[0], bus[1]],
                Windings = direct ? [] : windings,
                When = new Energised(bus[0], bus[1], Grade.Solid, volts / 2, null),
                Ratio = volts / 110,
                Output = new()
                {
                    Name = $"{name}.out",
                    Direct = direct,
                    Group = sketch.Chance(0.5) ? "A" : name,
                    Conductors =
                    [
                        new(
                            "X1",
                            ends[0],
                            110,
                            0,
                            direct ? Polarity.Plus : Polarity.Alternating,
                            Expression.True
                        ),
                        new(
                            "X2",
                            ends[1],
                            0,
                            0,
                            direct ? Polarity.Minus : Polarity.Alternating,
                            Expression.True
                        ),
                    ],
                },
            }
        );
        if (direct)
            sketch.Couplings.Add(new(name, windings, FirstDrives: true));
        if (sketch.Chance(0.7))
            Bond(name, "two wire", ends);
        return new(ends[0], ends[1], 110);
    }

    private Control Separate()
    {
        var nets = Supply("CTRL", "C", Present("CTRL"), "direct", 24);
        return new(nets[0], nets[1], 24);
    }

    /// <summary>An overload's trip, which opens every rung; its heaters come with the motor's leads.</summary>
    private void Overload()
    {
        if (sketch.Affords(2))
            overload = sketch.Add(Trip(sketch.Name("FT"), Expression.False));
    }

    private static Variable Trip(string name, Expression carries) =>
        PanelSketch.TwoValued(
            name,
            VariableKind.Trip,
            "ok",
            "tripped",
            Mover.Trip,
            Mover.Operator,
            when: carries
        );

    private string[] Heaters(string[] nets)
    {
        if (overload is null)
            return nets;
        var ids = new List<string>();
        var to = sketch.Poles(overload, ElementType.Thermal, nets, Expression.True, ids);
        var index = sketch.Variables.FindIndex(v => v.Name == overload);
        sketch.Variables[index] = Trip(overload, Expression.AnyOf(ids.Select(id => new Carries(id))));
        sketch.Devices.Add(
            new()
            {
                Tag = overload,
                Kind = "overload",
                Protects = [new("overload", ids, overload)],
            }
        );
        return to;
    }

    private void Selector()
    {
        var name = sketch.Name("S");
        string[] stops = sketch.Affords(7) && sketch.Chance(0.5) ? ["HAND", "OFF", "AUTO"] : ["OFF", "ON"];
        var between = sketch.Chance(0.6);
        var values = new List<string>(stops);
        var moves = new List<Move>();
        for (var i = 0; i + 1 < stops.Length; i++)
        {
            Turn(stops[i], stops[i + 1]);
            Turn(stops[i + 1], stops[i]);
        }
        if (!sketch.Affords(values.Count))
            return;
        sketch.Add(
            new Variable
            {
                Name = name,
                Device = name,
                Kind = VariableKind.Position,
                Values = values,
                Rest = "OFF",
                Moves = moves,
            }
        );
        sketch.Devices.Add(
            new()
            {
                Tag = name,
                Kind = "selector",
                Use = ControlUse.Mode,
            }
        );
        permits.AddRange(stops.Where(s => s != "OFF").Select(s => PanelSketch.Is(name, s)));

        void Turn(string from, string to)
        {
            if (between)
            {
                values.Add($"{from}>{to}");
                moves.Add(new(from, $"{from}>{to}", Mover.Operator, Expression.True, Expression.False));
                moves.Add(new($"{from}>{to}", to, Mover.Settle, Expression.True, Expression.False));
            }
            else
                moves.Add(new(from, to, Mover.Operator, Expression.True, Expression.False));
        }
    }

    /// <summary>A push button's contact; null when the budget is spent.</summary>
    private VariableIs? Button(ControlUse use)
    {
        // Room is left for what the button works on.
        if (!sketch.Affords(4))
            return null;
        var name = sketch.Name("B");
        var button = PanelSketch.TwoValued(
            name,
            VariableKind.Position,
            "released",
            "pressed",
            Mover.Operator,
            Mover.Operator
        );
        sketch.Add(button with { Momentary = true });
        sketch.Devices.Add(
            new()
            {
                Tag = name,
                Kind = "button",
                Use = use,
            }
        );
        return PanelSketch.Is(name, use == ControlUse.Stop ? "released" : "pressed");
    }

    /// <summary>A contactor whose coil hangs in a rung of its own between the control circuit's two nets.</summary>
    private Contactor? Coil(Control control, params IReadOnlyList<Expression> conditions)
    {
        if (!sketch.Affords(2))
            return null;
        var contactor = new Contactor(sketch.Name("K"));
        var rung = control.Hot;
        foreach (var condition in conditions)
            rung = Contact(contactor.Name, rung, condition);
        if (overload is not null)
            rung = Contact(overload, rung, PanelSketch.Is(overload, "ok"));
        if (conditions.Count == 0 || sketch.Chance(0.3))
            rung = Start(contactor, rung);
        if (sketch.Chance(0.05))
            rung = Contact(contactor.Name, rung, contactor.Out);
        sketch.Add(contactor.Name, ElementType.Load, rung, control.Return);
        sketch.Add(Armature(contactor, rung, control));
        contactors.Add(contactor);
        return contactor;
    }

    private string Contact(string device, string from, Expression closed)
    {
        var to = sketch.Net();
        sketch.Add(device, ElementType.Contact, from, to, closed);
        return to;
    }

    /// <summary>A start button, held by the contactor's own contact as often as not.</summary>
    private string Start(Contactor contactor, string from)
    {
        if (Button(ControlUse.Start) is not { } pressed)
            return from;
        var to = Contact("start", from, pressed);
        if (sketch.Chance(0.6))
            sketch.Add(contactor.Name, ElementType.Contact, from, to, contactor.In);
        return to;
    }

    private Variable Armature(Contactor contactor, string rung, Control control)
    {
        var grade = sketch.Chance(0.15) ? Grade.Loose : Grade.Solid;
        var pulls = new Energised(rung, control.Return, Grade.Solid, 0.85 * control.Volts, null);
        double? most = grade == Grade.Loose ? 0.8 * control.Volts : null;
        var holds = new Energised(rung, control.Return, grade, 0.2 * control.Volts, most);
        Expression may = sketch.Chance(0.3)
            ? new Energised(rung, control.Return, grade, 0.5 * control.Volts, most)
            : Expression.False;
        Expression mayDrop = sketch.Chance(0.2) ? Expression.Negate(pulls) : Expression.False;
        return new()
        {
            Name = contactor.Name,
            Device = contactor.Name,
            Kind = VariableKind.Armature,
            Values = ["out", "in"],
            Rest = "out",
            Coil = [rung, control.Return],
            Moves =
            [
                new("out", "in", Mover.Settle, pulls, may),
                new("in", "out", Mover.Settle, Expression.Negate(holds), mayDrop),
            ],
        };
    }

    /// <summary>A timer energised in parallel with a coil; its contact as a condition.</summary>
    private VariableIs? Timer(Contactor contactor)
    {
        if (!sketch.Affords(2))
            return null;
        var coil = sketch.Variables.First(v => v.Name == contactor.Name).Coil;
        var name = sketch.Name("KT");
        var energised = new Energised(coil[0], coil[1], Grade.Solid, 10, null);
        var off = sketch.Chance(0.3);
        sketch.Add(
            new Variable
            {
                Name = name,
                Device = name,
                Kind = VariableKind.Timer,
                Values = ["out", "in"],
                Rest = "out",
                Coil = coil,
                Moves =
                [
                    new("out", "in", off ? Mover.Settle : Mover.Delay, energised, Expression.False),
                    new(
                        "in",
                        "out",
                        off ? Mover.Delay : Mover.Settle,
                        Expression.Negate(energised),
                        Expression.False
                    ),
                ],
            }
        );
        return PanelSketch.Is(name, "in");
    }
}
