using Coldpath.Wiring;

namespace Coldpath.Trials;

/// <summary>
/// A panel of the usual size made of usual parts: soft-starter feeders with line, output and bypass contactors, their
/// overloads and motors, one control transformer, and rungs with buttons, selectors, timers and lamps.
/// </summary>
internal sealed class TypicalPanel
{
    private readonly List<string> nets = ["PE"];
    private readonly List<Element> elements = [];
    private readonly List<Variable> variables = [];
    private readonly List<Load> loads = [];

    public static Netlist Build(int feeders, bool failures)
    {
        var panel = new TypicalPanel();
        return panel.Netlist(feeders, failures);
    }

    private Netlist Netlist(int feeders, bool failures)
    {
        string[] source = [Net(), Net(), Net(), Net()];
        Link("BOND", ElementType.Conductor, source[3], "PE");
        Vary("Q1", VariableKind.Position, "open", "closed", Mover.Operator);
        var bus = Poles("Q1", ElementType.Contact, source[..3], Is("Q1", "closed"));
        Vary("FC", VariableKind.Position, "whole", "blown", Mover.Operator);
        var primary = Poles("FC", ElementType.Thermal, bus[..2], Is("FC", "whole"));
        Link("T1", ElementType.Load, primary[0], primary[1]);
        string[] secondary = [Net(), Net()];
        Link("T1.bond", ElementType.Conductor, secondary[1], "PE");
        Vary("ES", VariableKind.Position, "released", "pressed", Mover.Operator);
        var hot = Contact("ES", secondary[0], Is("ES", "released"));
        for (var i = 1; i <= feeders; i++)
            Feeder(i, bus, hot, secondary[1], failures);
        Link("H1", ElementType.Load, hot, secondary[1]);
        return new()
        {
            Panel = "typical",
            Earth = "PE",
            Nets = nets,
            Elements = elements,
            Variables = variables,
            Loads = loads,
            Supplies = [Mains(source)],
            Converters = [Transformer(primary, secondary)],
        };
    }

    private static Supply Mains(string[] nets)
    {
        SupplyConductor Phase(int i, double volts, double degrees) =>
            new(i < 3 ? $"L{i + 1}" : "N", nets[i], volts, degrees, Polarity.Alternating, Expression.True);
        return new()
        {
            Name = "MAINS",
            Group = "A",
            Conductors = [Phase(0, 277, 0), Phase(1, 277, -120), Phase(2, 277, 120), Phase(3, 0, 0)],
        };
    }

    private static Converter Transformer(string[] primary, string[] secondary) =>
        new()
        {
            Name = "T1",
            Inputs = primary,
            Windings = [primary, secondary],
            When = new Energised(primary[0], primary[1], Grade.Solid, 400, null),
            Output = new()
            {
                Name = "T1.out",
                Group = "T1",
                Conductors =
                [
                    new("X1", secondary[0], 120, 0, Polarity.Alternating, Expression.True),
                    new("X2", secondary[1], 0, 0, Polarity.Alternating, Expression.True),
                ],
            },
        };

    private void Feeder(int number, string[] bus, string hot, string common, bool failures)
    {
        string Tag(string name) => $"{name}{number}";
        Vary(Tag("F"), VariableKind.Position, "on", "off", Mover.Operator);
        var fused = Poles(Tag("F"), ElementType.Thermal, bus, Is(Tag("F"), "on"));
        var line = Contactor(Tag("KL"), fused, failures);
        Vary(Tag("G"), VariableKind.Cell, "off", "on", Mover.Settle);
        var fired = failures
            ? Failing(Tag("G"), "shorted", FailureClass.Semiconductor, "on")
            : Is(Tag("G"), "on");
        var soft = Poles(Tag("G"), ElementType.Semiconductor, line, fired);
        var heated = Poles(Tag("FT"), ElementType.Thermal, soft, Expression.True);
        var output = Contactor(Tag("KO"), heated, failures);
        var bypassed = Contactor(Tag("KB"), fused, failures);
        Poles(Tag("FB"), ElementType.Thermal, bypassed, output, Expression.True);
        var windings = new[] { 0, 1, 2 }.Select(i =>
            Link(Tag("M"), ElementType.Load, output[i], output[(i + 1) % 3])
        );
        loads.Add(
            new()
            {
                Name = Tag("M"),
                Elements = [.. windings.Select(e => e.Id)],
                Terminals = output,
                Modes = [new("run", 1450, output, [], [], Turning.Forward)],
            }
        );
        Link(
            Tag("M"),
            ElementType.Fault,
            output[0],
            "PE",
            failures ? Failed(Tag("M.earth"), FailureClass.Wiring) : Expression.False
        );
        Trip(Tag("FT"));
        Trip(Tag("FB"));
        Control(number, hot, common);
    }

    private void Control(int number, string hot, string common)
    {
        string Tag(string name) => $"{name}{number}";
        Vary(Tag("S"), VariableKind.Position, "OFF", "HAND", Mover.Operator);
        Vary(Tag("B"), VariableKind.Position, "released", "pressed", Mover.Operator);
        Vary(Tag("R"), VariableKind.Cell, "no", "yes", Mover.Process);
        Vary(Tag("KT"), VariableKind.Timer, "out", "in", Mover.Delay);
        var on = Contact(Tag("FT"), Contact(Tag("S"), hot, Is(Tag("S"), "HAND")), Is(Tag("FT"), "ok"));
        on = Contact(Tag("FB"), on, Is(Tag("FB"), "ok"));
        var started = Contact(Tag("B"), on, Is(Tag("B"), "pressed"));
        Link(Tag("KL"), ElementType.Contact, on, started, Is(Tag("KL"), "in"));
        Coil(Tag("KL"), started, common);
        Coil(Tag("KO"), Contact(Tag("KL"), on, Is(Tag("KL"), "in")), common);
        Coil(Tag("KT"), Contact(Tag("KO"), on, Is(Tag("KO"), "in")), common, Mover.Delay);
        var late = Contact(Tag("KT"), Contact(Tag("R"), on, Is(Tag("R"), "yes")), Is(Tag("KT"), "in"));
        Coil(Tag("KB"), late, common);
        Link(Tag("H"), ElementType.Load, Contact(Tag("KB"), hot, Is(Tag("KB"), "in")), common);
    }

    private string[] Contactor(string tag, string[] from, bool failures)
    {
        Vary(tag, VariableKind.Armature, "out", "in", Mover.Settle);
        var to = from.Select(_ => Net()).ToArray();
        for (var i = 0; i < from.Length; i++)
            Link(
                tag,
                ElementType.Contact,
                from[i],
                to[i],
                failures ? Failing(tag, $"weld{i + 1}", FailureClass.Contact, "in") : Is(tag, "in")
            );
        return to;
    }

    private void Coil(string tag, string a, string b, Mover by = Mover.Settle)
    {
        Link($"{tag}.coil", ElementType.Load, a, b);
        var index = variables.FindIndex(v => v.Name == tag);
        var pulls = new Energised(a, b, Grade.Solid, 100, null);
        var holds = new Energised(a, b, Grade.Solid, 24, null);
        variables[index] = variables[index] with
        {
            Moves =
            [
                new("out", "in", by, pulls, new Energised(a, b, Grade.Loose, 0, null)),
                new("in", "out", Mover.Settle, Expression.Negate(holds), Expression.False),
            ],
        };
    }

    private void Trip(string tag)
    {
        Vary(tag, VariableKind.Trip, "ok", "tripped", Mover.Operator);
        var carries = elements
            .Where(e => e.Device == tag && e.Type == ElementType.Thermal)
            .Select(e => new Carries(e.Id));
        variables[^1] = variables[^1] with
        {
            Moves = [new("ok", "tripped", Mover.Trip, Expression.AnyOf(carries), Expression.False)],
        };
    }

    private string Net()
    {
        nets.Add($"n{nets.Count}");
        return nets[^1];
    }

    private Element Link(string tag, ElementType type, string a, string b, Expression? closed = null)
    {
        var element = new Element
        {
            Id = $"{tag}.{elements.Count}",
            Device = tag,
            Type = type,
            A = a,
            B = b,
            Closed = closed ?? Expression.True,
        };
        elements.Add(element);
        return element;
    }

    private string Contact(string tag, string from, Expression closed)
    {
        var to = Net();
        Link(tag, ElementType.Contact, from, to, closed);
        return to;
    }

    private string[] Poles(string tag, ElementType type, string[] from, Expression closed)
    {
        var to = from.Select(_ => Net()).ToArray();
        Poles(tag, type, from, to, closed);
        return to;
    }

    private void Poles(string tag, ElementType type, string[] from, string[] to, Expression closed)
    {
        for (var i = 0; i < from.Length; i++)
            Link(tag, type, from[i], to[i], closed);
    }

    private static VariableIs Is(string variable, string value) => new(variable, value);

    private VariableIs Failed(string name, FailureClass failure)
    {
        Vary(name, VariableKind.Failure, "no", "yes", Mover.Failure);
        variables[^1] = variables[^1] with { Class = failure };
        return Is(name, "yes");
    }

    private Expression Failing(string tag, string how, FailureClass failure, string value) =>
        Expression.AnyOf(Is(tag, value), Failed($"{tag}.{how}", failure));

    private void Vary(string name, VariableKind kind, string rest, string other, Mover by) =>
        variables.Add(
            new()
            {
                Name = name,
                Device = name.Split('.')[0],
                Kind = kind,
                Values = [rest, other],
                Rest = rest,
                Moves =
                [
                    new(rest, other, by, Expression.True, Expression.False),
                    new(other, rest, by, Expression.True, Expression.False),
                ],
            }
        );
}
