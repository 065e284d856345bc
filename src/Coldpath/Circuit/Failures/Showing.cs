using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Failures;

/// <summary>
/// What somebody sees of a state without opening the panel: the position of every control, fuse, breaker and trip,
/// what the process and the supplies do, and which loads run, lamps among them. Written on levels of its own twice, as
/// it was before a move and as it is after.
/// </summary>
internal sealed class Showing
{
    private readonly StateSpace space;
    private readonly int[] variables;
    private readonly Diagram[] runs;

    public Showing(Behaviour behaviour)
    {
        space = behaviour.Space;
        variables = [.. space.Variables.Index().Where(v => IsSeen(v.Item)).Select(v => v.Index)];
        Loads = [.. behaviour.Netlist.Loads.Select(l => l.Name)];
        runs = [.. Loads.Select(load => behaviour.Network.Runs(load))];
        Before = Table.And(
            Table.AllOf(variables.SelectMany(Kept)),
            Table.AllOf(runs.Select((r, i) => Table.Equivalent(Table.Variable(LoadBefore(i)), r)))
        );
        After = Table.AllOf(runs.Select((r, i) => Table.Equivalent(Table.Variable(LoadAfter(i)), r)));
    }

    /// <summary>The loads, in declared order.</summary>
    public IReadOnlyList<string> Loads { get; }

    /// <summary>The levels of before hold what the state shows.</summary>
    public Diagram Before { get; }

    /// <summary>The levels of after hold what the state shows; its variables that are seen are their own.</summary>
    public Diagram After { get; }

    /// <summary>All levels of before and after.</summary>
    public Diagram Levels =>
        Table.Cube(
            variables
                .SelectMany(space.LevelsBefore)
                .Concat(Loads.Index().SelectMany(l => new[] { LoadBefore(l.Index), LoadAfter(l.Index) }))
        );

    /// <summary>The levels of the state that nobody sees, those of failures left out.</summary>
    public Diagram Unseen =>
        Table.Cube(space.Levels.Except(variables.Concat(space.FailureVariables).SelectMany(space.LevelsOf)));

    /// <summary>The levels of before as this state shows itself.</summary>
    public Diagram BeforeOf(State state) =>
        Table.Exists(Table.And(Before, space.Of(state)), Table.Cube(space.Levels));

    /// <summary>What is seen of the variables is as in the state.</summary>
    public Diagram SeenAs(State state) => Table.AllOf(variables.Select(v => space.Code(v, state[v])));

    /// <summary>The variables seen that have another value in the one state than in the other.</summary>
    public IEnumerable<int> Changed(State one, State other) => variables.Where(v => one[v] != other[v]);

    public bool Runs(int load, State state) => space.Holds(runs[load], state);

    /// <summary>The load ran after all answers of a set; false when it did so after none; null when after some.</summary>
    public bool? RanAfter(int load, Diagram answers)
    {
        var ran = Table.Meet(answers, Table.Literal(LoadAfter(load), true));
        var stood = Table.Meet(answers, Table.Literal(LoadAfter(load), false));
        return ran && stood ? null : ran;
    }

    private DiagramTable Table => space.Table;

    private IEnumerable<Diagram> Kept(int variable) =>
        space
            .LevelsOf(variable)
            .Zip(space.LevelsBefore(variable))
            .Select(pair => Table.Equivalent(Table.Variable(pair.First), Table.Variable(pair.Second)));

    private int LoadBefore(int load) => space.LevelCount + 2 * load;

    private int LoadAfter(int load) => space.LevelCount + 2 * load + 1;

    private static bool IsSeen(Variable variable) =>
        variable.Kind
            is VariableKind.Position
                or VariableKind.Process
                or VariableKind.Supply
                or VariableKind.Trip;
}
