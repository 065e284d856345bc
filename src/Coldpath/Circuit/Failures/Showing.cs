using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Circuit.Failures;

/// <summary>
/// What somebody sees of a state without a meter: the position of every control, fuse, breaker and trip, what the
/// indicator of a safety relay, a monitor, a soft starter or a drive tells, what the process and the supplies do, and
/// which loads run, lamps among them. Written on levels of its own twice, as it was before a move and as it is after.
/// </summary>
internal sealed class Showing
{
    private readonly StateSpace space;
    private readonly int[] variables;

    /// <summary>What main contacts follow: a contactor that latches has no indicator.</summary>
    private readonly HashSet<string> latches;
    private readonly Diagram[] runs;

    /// <summary>Where the load carries current and does not run: a lamp may glow, a motor hum or go on.</summary>
    private readonly Diagram[] doubtful;

    public Showing(Behaviour behaviour)
    {
        space = behaviour.Space;
        latches = behaviour
            .Netlist.Elements.Where(e => e is { Type: ElementType.Contact, Power: true })
            .SelectMany(e => Guards.Variables(e.Closed))
            .ToHashSet();
        variables = [.. space.Variables.Index().Where(v => IsSeen(v.Item)).Select(v => v.Index)];
        Loads = [.. behaviour.Netlist.Loads.Where(l => l.Modes.Count > 0).Select(l => l.Name)];
        runs = [.. Loads.Select(load => behaviour.Network.Runs(load))];
        doubtful = [.. Loads.Select(load => behaviour.Network.AbnormalAndLive(load))];
        WereSo = Table.And(Table.AllOf(variables.SelectMany(Kept)), Seen(LoadBefore));
        AreSo = Seen(LoadAfter);
    }

    /// <summary>The loads that may run, in declared order.</summary>
    public IReadOnlyList<string> Loads { get; }

    /// <summary>States in which some load may be seen either way.</summary>
    public Diagram Doubtful => Table.AnyOf(doubtful);

    /// <summary>The levels of before hold what the state shows; a doubtful load either way.</summary>
    public Diagram WereSo { get; }

    /// <summary>The levels of after hold what the state shows; its variables that are seen are their own.</summary>
    public Diagram AreSo { get; }

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
        Table.Exists(Table.And(WereSo, space.Of(state)), Table.Cube(space.Levels));

    /// <summary>The same of some variables alone.</summary>
    public Diagram Before(State state, IEnumerable<int> parts) =>
        Table.Exists(
            BeforeOf(state),
            Table.Cube(
                variables
                    .Except(parts)
                    .SelectMany(space.LevelsBefore)
                    .Concat(Loads.Index().Select(l => LoadBefore(l.Index)))
            )
        );

    /// <summary>What is seen besides the loads.</summary>
    public IReadOnlyList<int> Parts => variables;

    /// <summary>Somebody, the process or the supply moves it.</summary>
    public bool IsInput(int variable) => space.Variables[variable].Moves.Any(IsMade);

    /// <summary>From this value it goes only when it is moved, and never by itself.</summary>
    public bool Stays(int variable, int value)
    {
        var part = space.Variables[variable];
        var moves = part.Moves.Where(m => m.From == part.Values[value]).ToArray();
        return IsInput(variable) && !moves.Any(m => m.By is Mover.Settle or Mover.Delay);
    }

    private static bool IsMade(Move move) => move.By is Mover.Operator or Mover.Process;

    public bool Runs(int load, State state) => space.Holds(runs[load], state);

    /// <summary>Answers after which the load runs, or does not.</summary>
    public Diagram RunsAfter(int load, bool runs) => Table.Literal(LoadAfter(load), runs);

    private DiagramTable Table => space.Table;

    private Diagram Seen(Func<int, int> levelOf) =>
        Table.AllOf(
            Loads
                .Index()
                .Select(l =>
                    Table.Or(
                        doubtful[l.Index],
                        Table.Equivalent(Table.Variable(levelOf(l.Index)), runs[l.Index])
                    )
                )
        );

    private IEnumerable<Diagram> Kept(int variable) =>
        space
            .LevelsOf(variable)
            .Zip(space.LevelsBefore(variable))
            .Select(pair => Table.Equivalent(Table.Variable(pair.First), Table.Variable(pair.Second)));

    private int LoadBefore(int load) => space.LevelCount + 2 * load;

    private int LoadAfter(int load) => space.LevelCount + 2 * load + 1;

    private bool IsSeen(Variable variable) =>
        variable.Kind
            is VariableKind.Position
                or VariableKind.Process
                or VariableKind.Supply
                or VariableKind.Trip
        || HasIndicator(variable);

    private bool HasIndicator(Variable variable) =>
        variable.Kind == VariableKind.Cell
        && variable.Name == variable.Device
        && !latches.Contains(variable.Name);
}
