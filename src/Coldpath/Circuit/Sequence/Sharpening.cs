using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Phasors;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Sequence;

/// <summary>
/// Puts uncertain coils to the solver: what it rules out is no move any more, what it is sure of is a certain one, for exactly
/// what conducts around the coil. What is left after so many conducting sets stays uncertain.
/// </summary>
/// <param name="network">The circuit.</param>
/// <param name="reachable">States that matter; shorted ones left out, whose voltages nobody knows.</param>
internal sealed class Sharpening(Network network, Diagram reachable)
{
    private const int MostSets = 100;

    /// <summary>After so many sets in a row that it cannot decide, the solver gives up on the move.</summary>
    private const int MostUndecided = 12;

    /// <summary>So many elements are looked at in all, one for each set that it may matter to.</summary>
    private const long MostElements = 30_000_000;

    private readonly CoilVoltages voltages = new();
    private readonly StateSpace space = network.States;
    private long setsLeft = MostElements / Math.Max(1, network.Netlist.Elements.Count);

    /// <summary>The transition with what could be decided of it.</summary>
    public Transition Of(Transition transition)
    {
        if (
            !space.Table.Meet(transition.Uncertain, reachable)
            || ThresholdsOf(transition) is not { } thresholds
        )
            return transition;
        var (never, always) = (Diagram.False, Diagram.False);
        var table = space.Table;
        var left = table.And(transition.Uncertain, reachable);
        var (sets, undecided) = (0, 0);
        while (
            sets++ < MostSets && undecided < MostUndecided && setsLeft-- > 0 && space.First(left) is { } state
        )
        {
            var (ruling, condition) = Judge(thresholds, state);
            undecided = ruling == Ruling.Open ? undecided + 1 : 0;
            if (ruling == Ruling.Never)
                never = table.Or(never, condition);
            else if (ruling == Ruling.Always)
                always = table.Or(always, condition);
            left = table.Except(left, condition);
        }
        if (never.IsFalse && always.IsFalse)
            return transition;
        var solved = table.And(transition.Uncertain, always);
        return transition with
        {
            Certain = table.Or(transition.Certain, solved),
            Uncertain = table.Except(transition.Uncertain, table.Or(never, always)),
            Solved = solved,
        };
    }

    /// <summary>The voltage across the coil that decides the move, in a state that it may start from; null for other moves.</summary>
    public CoilReading? Read(Transition transition, State state)
    {
        if (ThresholdsOf(transition) is not { } thresholds)
            return null;
        return Read(thresholds.A, thresholds.B, thresholds.Rated, thresholds.MayLow, state);
    }

    /// <summary>The voltage across any load.</summary>
    public CoilReading Read(string a, string b, double rated, double needed, State state)
    {
        var (from, to) = (network.Mesh.Net(a), network.Mesh.Net(b));
        var circuit = CoilCircuit.Around(new Conducting(network, state), from, to);
        return new(voltages.Of(circuit, from, to), rated, needed, circuit.Condition);
    }

    private CoilThresholds? ThresholdsOf(Transition transition)
    {
        if (transition.Cause != Cause.Settle)
            return null;
        var variable = space.Variables[transition.Variable];
        return variable
            .Moves.Where(m =>
                m.From == variable.Values[transition.From] && m.To == variable.Values[transition.To]
            )
            .Select(m => CoilThresholds.Of(variable, m))
            .FirstOrDefault(t => t is not null);
    }

    private (Ruling, Diagram) Judge(CoilThresholds thresholds, State state)
    {
        var (a, b) = (network.Mesh.Net(thresholds.A), network.Mesh.Net(thresholds.B));
        var circuit = CoilCircuit.Around(new Conducting(network, state), a, b);
        return (thresholds.Rule(voltages.Of(circuit, a, b)), circuit.Condition);
    }
}
