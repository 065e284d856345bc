using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>What is started, and how.</summary>
internal sealed partial class RandomPanels
{
    private void Starter(Plan plan, string[] bus, Control control)
    {
        var leads = bus.Length == 4 ? bus[..3] : bus;
        var first = Coil(control, [.. Permits()]);
        if (first is null)
        {
            Motor(leads, "M1");
            return;
        }
        switch (plan)
        {
            case Plan.Reversing:
                Reversing(leads, control, first);
                break;
            case Plan.TwoWays:
                TwoWays(leads, control, first);
                break;
            case Plan.Staged when leads.Length == 3:
                Staged(leads, control, first);
                break;
            case Plan.Drive when leads.Length == 3:
                Drive(leads, first);
                break;
            default:
                Motor(Heaters(sketch.Poles(first.Name, ElementType.Contact, leads, first.In)), "M1");
                break;
        }
    }

    private IEnumerable<Expression> Permits()
    {
        if (permits.Count > 0)
            yield return sketch.Pick<Expression>(permits);
        if (sketch.Chance(0.3) && Button(ControlUse.Stop) is { } stop)
            yield return stop;
    }

    /// <summary>Two contactors that swap leads, with or without interlocks of either kind.</summary>
    private void Reversing(string[] leads, Control control, Contactor first)
    {
        var permit = permits.Count > 0 ? permits[^1] : Expression.True;
        var second = sketch.Chance(0.6) ? Coil(control, permit, first.Out) : Coil(control, permit);
        var ends = sketch.Poles(first.Name, ElementType.Contact, leads, first.In);
        if (second is not null)
        {
            sketch.Poles(second.Name, ElementType.Contact, [.. leads.Reverse()], ends, second.In);
            if (sketch.Chance(0.4))
                Interlock(first, second);
            if (sketch.Chance(0.4))
                Guard(first, second.Out);
        }
        Motor(Heaters(ends), "M1");
    }

    private void Interlock(Contactor first, Contactor second) =>
        sketch.Constraints.Add(
            new($"{first.Name}/{second.Name}", "mechanical", Expression.AnyOf(first.Out, second.Out))
        );

    /// <summary>Adds a condition to the last contact before the contactor's coil.</summary>
    private void Guard(Contactor contactor, Expression condition)
    {
        var coil = sketch.Variables.First(v => v.Name == contactor.Name).Coil[0];
        var index = sketch.Elements.FindIndex(e => e.B == coil && e.Type == ElementType.Contact);
        if (index >= 0)
            sketch.Elements[index] = sketch.Elements[index] with
            {
                Closed = Expression.AllOf(sketch.Elements[index].Closed, condition),
            };
    }

    /// <summary>A soft starter's semiconductors, and a bypass contactor around them.</summary>
    private void TwoWays(string[] leads, Control control, Contactor first)
    {
        var fires = sketch.Affords(2)
            ? PanelSketch.Is(
                sketch.Add(
                    PanelSketch.TwoValued(
                        "G1",
                        VariableKind.Cell,
                        "off",
                        "on",
                        Mover.Process,
                        Mover.Process,
                        when: first.In
                    )
                ),
                "on"
            )
            : first.In;
        var middle = sketch.Poles(first.Name, ElementType.Contact, leads, first.In);
        var ends = sketch.Poles("G1", ElementType.Semiconductor, middle, fires);
        if (Timer(first) is { } late && Coil(control, late) is { } bypass)
            sketch.Poles(
                bypass.Name,
                ElementType.Contact,
                sketch.Chance(0.7) ? middle : leads,
                ends,
                bypass.In
            );
        Motor(Heaters(ends), "M1");
    }

    /// <summary>Starting through series elements, or in star first.</summary>
    private void Staged(string[] leads, Control control, Contactor first)
    {
        var near = sketch.Poles(first.Name, ElementType.Contact, leads, first.In);
        var second = Timer(first) is { } late ? Coil(control, late) : Coil(control);
        var closes = second?.In ?? first.In;
        if (sketch.Chance(0.5))
        {
            var ends = sketch.Poles("R1", ElementType.Series, near, Expression.True);
            sketch.Poles("KB", ElementType.Contact, sketch.Chance(0.8) ? near : leads, ends, closes);
            if (sketch.Chance(0.3))
                sketch.Add("R1", ElementType.Series, ends[0], ends[1], closes);
            Motor(Heaters(ends), "M1");
        }
        else
            SixLeadMotor(Heaters(near), leads, Expression.Negate(closes), closes, "M1");
    }

    private void Drive(string[] leads, Contactor first)
    {
        var line = sketch.Poles(first.Name, ElementType.Contact, leads, first.In);
        var output = sketch.NewNets(3);
        sketch.Poles("U1", ElementType.Load, line, [line[1], line[2], line[0]], Expression.True);
        Expression any = Expression.AnyOf(line.Select(net => new Live(net)));
        sketch.Converters.Add(
            new()
            {
                Name = "U1",
                Type = ConverterType.Drive,
                Inputs = line,
                When = sketch.Chance(0.5)
                    ? any
                    : new Energised(line[0], line[1], sketch.Pick(Grade.Solid, Grade.Loose), 0, null),
                Output = new()
                {
                    Name = "U1.out",
                    Group = "U1",
                    Limited = true,
                    Conductors =
                    [
                        new("U", output[0], 230, 0, Polarity.Alternating, Expression.True),
                        new("V", output[1], 230, -120, Polarity.Alternating, Expression.True),
                        new("W", output[2], 230, 120, Polarity.Alternating, Expression.True),
                    ],
                },
            }
        );
        sketch.Couplings.Add(new("U1", [line, output], sketch.Chance(0.3)));
        if (sketch.Affords(2) && sketch.Chance(0.4))
        {
            var bypass = PanelSketch.TwoValued(
                "KX",
                VariableKind.Cell,
                "out",
                "in",
                Mover.Process,
                Mover.Process
            );
            sketch.Add(bypass);
            sketch.Poles("KX", ElementType.Contact, line, output, PanelSketch.Is("KX", "in"));
        }
        Motor(output, "M1");
    }
}
