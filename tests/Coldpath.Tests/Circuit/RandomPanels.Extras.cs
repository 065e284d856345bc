using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>What else hangs about, and what was wired wrong.</summary>
internal sealed partial class RandomPanels
{
    private void Extras(Control control)
    {
        if (
            sketch.Chance(0.25)
            && contactors.Count > 0
            && Timer(sketch.Pick<Contactor>(contactors)) is { } late
        )
            Coil(control, late);
        if (sketch.Chance(0.15))
            Race(control);
        if (sketch.Chance(0.12))
            Chatter(control);
        if (sketch.Chance(0.12))
            Store();
        if (sketch.Chance(0.15) && sketch.Affords(2))
            Fault();
        if (sketch.Chance(0.15))
            sketch.Add("H1", ElementType.Load, control.Hot, control.Return);
        if (sketch.Chance(0.15))
            sketch.Add("D1", ElementType.Diode, RandomNet(), RandomNet());
    }

    /// <summary>Two relays, each through the other's closed contact: the first to pull in keeps the other out.</summary>
    private void Race(Control control)
    {
        if (
            sketch.Affords(4)
            && Coil(control, Expression.True) is { } one
            && Coil(control, one.Out) is { } other
        )
            if (sketch.Chance(0.6))
                Guard(one, other.Out);
            else
                Interlock(one, other);
    }

    /// <summary>A relay through its own closed contact.</summary>
    private void Chatter(Control control)
    {
        if (sketch.Affords(2) && Coil(control, Expression.True) is { } relay)
            Guard(relay, relay.Out);
    }

    private void Store()
    {
        if (!sketch.Affords(2))
            return;
        var ends = new[] { RandomNet(), sketch.Chance(0.5) ? RandomNet() : sketch.Net() };
        var charged = PanelSketch.TwoValued(
            "C1.charged",
            VariableKind.Condition,
            "no",
            "yes",
            Mover.Condition,
            Mover.Condition
        );
        sketch.Add(charged);
        sketch.Add("C1", ElementType.Load, ends[0], ends[1]);
        sketch.Supplies.Add(
            new()
            {
                Name = "C1",
                Direct = true,
                Present = PanelSketch.Is("C1.charged", "yes"),
                Group = "C1",
                Store = new("C1.charged", "30 s"),
                Conductors =
                [
                    new("+", ends[0], 300, 0, Polarity.Plus, Expression.True),
                    new("-", ends[1], 0, 0, Polarity.Minus, Expression.True),
                ],
            }
        );
    }

    private void Fault() =>
        sketch.Add(
            "fault",
            ElementType.Fault,
            RandomNet(),
            sketch.Chance(0.7) ? PanelSketch.Earth : RandomNet(),
            Failed("fault", FailureClass.Wiring)
        );

    private string RandomNet() => sketch.Pick<string>(sketch.Nets);

    /// <summary>One to three wiring mistakes.</summary>
    private void Mischief()
    {
        for (var i = sketch.Dice.Next(1, 4); i > 0; i--)
            switch (sketch.Dice.Next(5))
            {
                case 0:
                    sketch.Add("wire", RandomType(), RandomNet(), RandomNet(), RandomGuard());
                    break;
                case 1:
                    Change(e => e with { B = RandomNet() });
                    break;
                case 2:
                    Change(e => e with { Closed = Expression.Negate(e.Closed) });
                    break;
                case 3:
                    Change(e => e with { Type = RandomType() });
                    break;
                default:
                    Change(e => e with { Closed = Expression.AllOf(e.Closed, RandomGuard()) });
                    break;
            }
    }

    private void Change(Func<Element, Element> change)
    {
        var index = sketch.Dice.Next(sketch.Elements.Count);
        sketch.Elements[index] = change(sketch.Elements[index]);
    }

    private ElementType RandomType() =>
        sketch.Pick(
            ElementType.Conductor,
            ElementType.Contact,
            ElementType.Contact,
            ElementType.Semiconductor,
            ElementType.Thermal,
            ElementType.Series,
            ElementType.Load,
            ElementType.Load,
            ElementType.Diode,
            ElementType.Fault
        );

    private Expression RandomGuard()
    {
        if (sketch.Variables.Count == 0 || sketch.Chance(0.3))
            return Expression.True;
        var variable = sketch.Pick<Variable>(sketch.Variables);
        var guard = PanelSketch.Is(variable.Name, sketch.Pick(variable.Values));
        return sketch.Chance(0.3) ? Expression.Negate(guard) : guard;
    }
}
