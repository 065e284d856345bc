using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>A netlist written down by hand: a 400/230 V supply on nets L1, L2, L3, N, its neutral bonded to earth.</summary>
internal sealed class Board
{
    private readonly List<string> nets = ["PE", "L1", "L2", "L3", "N"];
    private readonly List<Supply> supplies = [];
    private readonly List<Converter> converters = [];
    private readonly List<Variable> variables = [];
    private readonly List<Element> elements = [];
    private readonly List<NetlistDevice> devices = [];
    private readonly List<Load> loads = [];
    private readonly List<Constraint> constraints = [];
    private readonly List<Operation> powered = [];

    public Board(bool canFail = false)
    {
        if (canFail)
            Variable("MAINS", VariableKind.Supply, "present", "absent")
                .Moves("present", "absent", Mover.Process)
                .Moves("absent", "present", Mover.Process);
        supplies.Add(
            ThreePhase("MAINS", "L1", "L2", "L3", "N") with
            {
                Present = canFail ? Is("MAINS", "present") : Expression.True,
            }
        );
        Element("bond", ElementType.Conductor, "N", "PE", Expression.True);
    }

    public static Expression Is(string variable, string value) => new VariableIs(variable, value);

    public static Expression Energised(string a, string b) =>
        new Energised(a, b, Grade.Solid, 0.85 * 230, 1.1 * 230);

    public static Supply ThreePhase(
        string name,
        string a,
        string b,
        string c,
        string? n = null,
        string? group = null
    )
    {
        SupplyConductor Phase(string mark, string net, double degrees) =>
            new(mark, net, 230.94, degrees, Polarity.Alternating, Expression.True);

        List<SupplyConductor> conductors = [Phase("L1", a, 0), Phase("L2", b, -120), Phase("L3", c, 120)];
        if (n is not null)
            conductors.Add(new("N", n, 0, 0, Polarity.Alternating, Expression.True));
        return new()
        {
            Name = name,
            Group = group ?? name,
            Conductors = conductors,
        };
    }

    public Board Supply(Supply supply)
    {
        supplies.Add(supply);
        return Nets([.. supply.Conductors.Select(c => c.Net)]);
    }

    public Board Converter(Converter converter)
    {
        converters.Add(converter);
        return Nets([.. converter.Output.Conductors.Select(c => c.Net)]);
    }

    public Board Element(
        string id,
        ElementType type,
        string a,
        string b,
        Expression closed,
        string? device = null,
        bool power = false
    )
    {
        elements.Add(
            new()
            {
                Id = id,
                Device = device ?? id,
                Type = type,
                A = a,
                B = b,
                Closed = closed,
                Power = power,
            }
        );
        return Nets(a, b);
    }

    /// <summary>A contact that is closed while its variable has the value.</summary>
    public Board Contact(string a, string b, string variable, string value, bool power = false) =>
        Element($"{variable}.{a}-{b}", ElementType.Contact, a, b, Is(variable, value), variable, power);

    /// <summary>Three poles; nets are the names before and after with 1, 2, 3.</summary>
    public Board Poles(string before, string after, string variable, string value, string order = "123")
    {
        for (var i = 0; i < 3; i++)
            Contact(before + (i + 1), after + order[i], variable, value, power: true);
        return this;
    }

    public Board Variable(string name, VariableKind kind, params IReadOnlyList<string> values)
    {
        variables.Add(
            new()
            {
                Name = name,
                Device = name,
                Kind = kind,
                Values = values,
                Rest = values[0],
            }
        );
        return this;
    }

    /// <summary>A move of the variable declared last.</summary>
    public Board Moves(string from, string to, Mover by, Expression? when = null, Expression? may = null) =>
        Last(v =>
            v with
            {
                Moves = [.. v.Moves, new(from, to, by, when ?? Expression.True, may ?? Expression.False)],
            }
        );

    public Board Last(Func<Variable, Variable> change)
    {
        variables[^1] = change(variables[^1]);
        return this;
    }

    /// <summary>A two-position control that springs back; closed or open contacts are added apart.</summary>
    public Board Button(string name, ControlUse use) =>
        Variable(name, VariableKind.Position, "released", "pressed")
            .Moves("released", "pressed", Mover.Operator)
            .Moves("pressed", "released", Mover.Operator)
            .Last(v => v with { Momentary = true })
            .Device(
                new()
                {
                    Tag = name,
                    Kind = "control",
                    Use = use,
                }
            );

    /// <summary>A control that stays in each of two positions.</summary>
    public Board Switch(string name, string rest, string other, ControlUse use = ControlUse.None) =>
        Variable(name, VariableKind.Position, rest, other)
            .Moves(rest, other, Mover.Operator)
            .Moves(other, rest, Mover.Operator)
            .Device(
                new()
                {
                    Tag = name,
                    Kind = "control",
                    Use = use,
                }
            );

    /// <summary>A coil between two nets with its armature.</summary>
    public Board Coil(string name, string a, string b, Expression? may = null)
    {
        var energised = Energised(a, b);
        return Element($"{name}.coil", ElementType.Load, a, b, Expression.True, name)
            .Variable(name, VariableKind.Armature, "out", "in")
            .Moves("out", "in", Mover.Settle, energised, may)
            .Moves("in", "out", Mover.Settle, Expression.Negate(energised));
    }

    /// <summary>A three-phase motor of three windings joined in a star, at nets u1, u2, u3 of the given name.</summary>
    public Board Motor(string name, string terminals)
    {
        string[] feed = [terminals + "1", terminals + "2", terminals + "3"];
        foreach (var net in feed)
            Element($"{name}.{net}", ElementType.Load, net, $"{name}.star", Expression.True, name);
        loads.Add(
            new()
            {
                Name = name,
                Elements = [.. feed.Select(net => $"{name}.{net}")],
                Terminals = feed,
                Modes = [new("run", null, feed, [], [], Turning.Forward)],
            }
        );
        return this;
    }

    public Board Device(NetlistDevice device)
    {
        devices.Add(device);
        return this;
    }

    /// <summary>A lockable disconnect on the poles that its variable names.</summary>
    public Board Isolator(string name) =>
        Device(
            new()
            {
                Tag = name,
                Kind = "disconnect",
                Isolates = new(
                    name,
                    [.. elements.Where(e => e.Device == name).Select(e => e.Id)],
                    true,
                    true,
                    1
                ),
            }
        );

    /// <summary>A fuse between two nets that blows by itself alone.</summary>
    public Board Fuse(string name, string a, string b) =>
        Contact(a, b, name, "whole", power: true)
            .Variable(name, VariableKind.Trip, "whole", "blown")
            .Moves("blown", "whole", Mover.Operator)
            .Device(
                new()
                {
                    Tag = name,
                    Kind = "fuse",
                    OpensOnShort = [new(name, "blown", [$"{name}.{a}-{b}"], 50)],
                }
            );

    public Board Interlock(string name, Expression holds)
    {
        constraints.Add(new(name, "mechanical", holds));
        return this;
    }

    public Board Power(string variable, string value)
    {
        powered.Add(new(variable, value));
        return this;
    }

    public Board Load(Load load)
    {
        loads.Add(load);
        return this;
    }

    public Netlist Build() =>
        new()
        {
            Panel = "board",
            Earth = "PE",
            Nets = nets,
            Supplies = supplies,
            Converters = converters,
            Variables = variables,
            Elements = elements,
            Devices = devices,
            Loads = loads,
            Constraints = constraints,
            Powered = powered,
        };

    private Board Nets(params ReadOnlySpan<string> names)
    {
        foreach (var name in names)
            if (!nets.Contains(name))
                nets.Add(name);
        return this;
    }
}
