using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;
using FluentAssertions;

namespace Coldpath.Tests.Devices.Behaving;

/// <summary>A small panel played step by step from its powered state.</summary>
internal sealed class Played
{
    private readonly Netlist netlist;
    private readonly Behaviour behaviour;
    private State state;

    private Played(Netlist netlist, int failures = 0)
    {
        this.netlist = netlist;
        behaviour = new Behaviour(netlist, new DiagramTable(), failures);
        state = behaviour.Powered;
    }

    /// <summary>400/230 V TN-S, a control supply of 120 V on rails 1 and 2, and the lines given.</summary>
    public static Played With(string lines, string system = "400 V 3-phase 50 Hz, TN-S") =>
        new(Bound(lines, system));

    /// <summary>The same, in which these can fail, all of them: "K1.jams=yes" is then an operation.</summary>
    public static Played Failing(IReadOnlyCollection<string> failures, string lines)
    {
        var netlist = Bound(lines, "400 V 3-phase 50 Hz, TN-S");
        netlist.NamedFailures().Should().Contain(failures);
        return new(netlist.WithFailures(failures.ToHashSet()), failures.Count);
    }

    private static Netlist Bound(string lines, string system)
    {
        var text = $"""
            panel "Bench"
              rules IEC
              system {system}
            supply MAINS
            control supply EXT 120 V
            EXT[L] -> rail 1
            EXT[N] -> rail 2
            {lines}

            """;
        var bound = PanelBinder.Bind(
            PanelParser.Parse(new SourceText("bench.panel", text)),
            KindLibrary.Standard
        );
        bound.Findings.Should().BeEmpty();
        return bound.Netlist!;
    }

    /// <summary>The value of a variable now.</summary>
    public string this[string variable]
    {
        get
        {
            var at = behaviour.Space.IndexOf(variable);
            return netlist.Variables[at].Values[state[at]];
        }
    }

    /// <summary>Makes operations such as "S1=pressed" in order, the circuit settling after each.</summary>
    public Played Do(params string[] operations)
    {
        foreach (var operation in operations)
        {
            var done = Operate(operation);
            done.Refusal.Should().BeNull($"{operation} can be made");
            done.Chatters.Should().BeFalse($"the circuit comes to rest after {operation}");
            done.Raced.Should().BeFalse($"nothing races after {operation}");
            state = done.State;
        }
        return this;
    }

    /// <summary>Whether an operation cannot be made now.</summary>
    public bool Refuses(string operation) => Operate(operation).Refusal is not null;

    public bool Runs(string load, Turning turns = Turning.Any) => Holds(new Runs(load, turns));

    public bool Live(string point) => Holds(new Live(NetOf(point)));

    public bool Closed(string element) => Holds(new Closed(element));

    public bool Joined(string a, string b) => Holds(new Joined(NetOf(a), NetOf(b)));

    public bool Holds(Expression condition) => behaviour.Space.Holds(behaviour.Of(condition), state);

    /// <summary>Whether some reachable state, passing ones included, has it.</summary>
    public bool Reaches(Expression condition) => behaviour.ShortestTo(behaviour.Of(condition)) is not null;

    /// <summary>The modes in which a load runs now, by their feeds and joints.</summary>
    public Load Load(string name) => netlist.Loads.Single(l => l.Name == name);

    public Netlist Netlist => netlist;

    private string NetOf(string point) => netlist.Points.Single(p => p.Name == point).Net;

    private Operated Operate(string operation)
    {
        var (variable, value) = (
            operation[..operation.IndexOf('=')],
            operation[(operation.IndexOf('=') + 1)..]
        );
        return behaviour.Operator.Operate(state, new Operation(variable, value));
    }
}
