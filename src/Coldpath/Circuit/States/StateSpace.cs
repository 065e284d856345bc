using System.Numerics;
using Coldpath.Circuit.Diagrams;
using Coldpath.Wiring;

namespace Coldpath.Circuit.States;

/// <summary>
/// The states of a netlist as assignments of a diagram table's levels. Variables and values are numbered as the
/// netlist declares them; the order of their levels is chosen for small diagrams and shows nowhere else.
/// </summary>
public sealed class StateSpace
{
    private readonly Dictionary<string, int> indexes = [];
    private readonly Dictionary<string, int>[] values;
    private readonly Encoding[] encodings;
    private readonly Diagram[][] valueIs;

    /// <param name="netlist">Its variables.</param>
    /// <param name="table">Where the diagrams live; a new one when null.</param>
    /// <param name="order">The variables from the first level down; chosen by <see cref="VariableOrder"/> when null.</param>
    /// <param name="failures">At most so many failures have happened in any state; no limit when null.</param>
    public StateSpace(
        Netlist netlist,
        DiagramTable? table = null,
        IReadOnlyList<int>? order = null,
        int? failures = null
    )
    {
        Failures = failures;
        Table = table ?? new DiagramTable();
        Variables = netlist.Variables;
        for (var i = 0; i < Variables.Count; i++)
            indexes.Add(Variables[i].Name, i);
        values = [.. Variables.Select(v => v.Values.Index().ToDictionary(p => p.Item, p => p.Index))];
        encodings = new Encoding[Variables.Count];
        foreach (var variable in order ?? VariableOrder.Of(netlist))
        {
            var count = Variables[variable].Values.Count;
            var (first, width) = (LevelCount + 1, Encoding.Width(count));
            var before = Enumerable.Range(0, width).Select(bit => first + 2 * bit).ToArray();
            encodings[variable] = new([.. before.Select(l => l + 1)], LevelCount, before, count);
            LevelCount = first + 2 * width;
        }
        Levels = [.. encodings.SelectMany(e => e.Levels).Order()];
        valueIs = [.. encodings.Select(ValueDiagrams)];
        Domain = Table.AllOf(encodings.Select(DomainOf));
        if (failures is { } most)
            Domain = Table.And(Domain, AtMostFailed(most));
        Rest = new(Variables.Select(v => IndexOfValue(v.Name, v.Rest)));
    }

    public DiagramTable Table { get; }

    public IReadOnlyList<Variable> Variables { get; }

    /// <summary>The most failures that a state may hold; null when nothing limits them.</summary>
    public int? Failures { get; }

    /// <summary>All levels that hold a variable's bits, rising.</summary>
    public IReadOnlyList<int> Levels { get; }

    /// <summary>One more than the highest level in use, spare ones included.</summary>
    public int LevelCount { get; private set; }

    /// <summary>The numbers of the failure variables, as declared.</summary>
    public IEnumerable<int> FailureVariables =>
        Variables.Index().Where(v => v.Item.Kind == VariableKind.Failure).Select(v => v.Index);

    /// <summary>
    /// The assignments that are the code of a state: every state has exactly one. States with more failures than
    /// allowed are none.
    /// </summary>
    public Diagram Domain { get; }

    /// <summary>Every variable at its rest value (before anything settles).</summary>
    public State Rest { get; }

    /// <summary>All states there are, reachable or not.</summary>
    public BigInteger Size => Count(Domain);

    public int IndexOf(string variable) =>
        indexes.TryGetValue(variable, out var index)
            ? index
            : throw new ArgumentException($"no variable {variable}", nameof(variable));

    public int IndexOfValue(string variable, string value) =>
        values[IndexOf(variable)].TryGetValue(value, out var index)
            ? index
            : throw new ArgumentException($"{variable} has no value {value}", nameof(value));

    /// <summary>
    /// The variable has the value. Over all values of a variable these conditions are a partition of every
    /// assignment, also of those outside <see cref="Domain"/>.
    /// </summary>
    public Diagram Is(int variable, int value) => valueIs[variable][value];

    public Diagram Is(string variable, string value) => Is(IndexOf(variable), IndexOfValue(variable, value));

    /// <summary>The one code of the value: <see cref="Is(int, int)"/> within the domain.</summary>
    public Diagram Code(int variable, int value) => Table.Cube(encodings[variable].Code(value));

    /// <summary>The cube of the variable's levels, to quantify it away.</summary>
    public Diagram Bits(int variable) => Table.Cube(encodings[variable].Levels);

    /// <summary>The cube of several variables' levels.</summary>
    public Diagram Bits(params IEnumerable<int> variables) =>
        Table.Cube(variables.SelectMany(v => encodings[v].Levels));

    /// <summary>The variable's levels, most significant bit first.</summary>
    public IReadOnlyList<int> LevelsOf(int variable) => encodings[variable].Levels;

    /// <summary>A level just above the variable's own, free for a question that goes with it ("taken out").</summary>
    public int SpareLevel(int variable) => encodings[variable].Spare;

    /// <summary>For each of the variable's levels one beside it, free for the value that it had before something.</summary>
    public IReadOnlyList<int> LevelsBefore(int variable) => encodings[variable].Before;

    /// <summary>The states with the variable set to the value, all else as in <paramref name="states"/>.</summary>
    public Diagram Assign(Diagram states, int variable, int value) =>
        Table.And(Table.Exists(states, Bits(variable)), Code(variable, value));

    /// <summary>
    /// Where the move leads from those of <paramref name="states"/> that have the value <paramref name="from"/> and
    /// satisfy <paramref name="when"/>.
    /// </summary>
    public Diagram Image(Diagram states, Diagram when, int variable, int from, int to)
    {
        var moving = Table.And(states, Is(variable, from));
        return Table.And(Table.AndExists(moving, when, Bits(variable)), Code(variable, to));
    }

    /// <summary>The states from which the move leads into <paramref name="states"/>.</summary>
    public Diagram PreImage(Diagram states, Diagram when, int variable, int from, int to)
    {
        var behind = Table.AndExists(states, Code(variable, to), Bits(variable));
        return Table.AllOf(behind, Code(variable, from), when);
    }

    /// <summary>How many states the condition holds in.</summary>
    public BigInteger Count(Diagram states) => Table.Count(Table.And(states, Domain), Levels);

    /// <summary>The condition that is true of this state alone.</summary>
    public Diagram Of(State state) =>
        Table.AllOf(state.Values.Select((value, variable) => Code(variable, value)));

    public bool Holds(Diagram condition, State state) => Table.Evaluate(condition, Assignment(state));

    /// <summary>The state's bits by level; spare levels false.</summary>
    public bool[] Assignment(State state)
    {
        var bits = new bool[LevelCount];
        for (var variable = 0; variable < encodings.Length; variable++)
            foreach (var (level, bit) in encodings[variable].Code(state[variable]))
                bits[level] = bit;
        return bits;
    }

    public State Decode(ReadOnlySpan<bool> assignment)
    {
        var decoded = new int[encodings.Length];
        for (var variable = 0; variable < encodings.Length; variable++)
            decoded[variable] = encodings[variable].Decode(assignment);
        return new(decoded);
    }

    /// <summary>The first state by declared order of variables and values; null when there is none.</summary>
    public State? First(Diagram states)
    {
        var left = Table.And(states, Domain);
        if (left.IsFalse)
            return null;
        var first = new int[encodings.Length];
        for (var variable = 0; variable < first.Length; variable++)
        {
            while (!Table.Meet(left, Code(variable, first[variable])))
                first[variable]++;
            left = Table.And(left, Code(variable, first[variable]));
        }
        return new(first);
    }

    /// <summary>A guard: an expression over variables alone.</summary>
    public Diagram Guard(Expression guard) =>
        guard switch
        {
            Constant c => c.Value ? Diagram.True : Diagram.False,
            VariableIs v => Is(v.Variable, v.Value),
            Not n => !Guard(n.Term),
            All a => Table.AllOf(a.Terms.Select(Guard)),
            Any a => Table.AnyOf(a.Terms.Select(Guard)),
            _ => throw new ArgumentException(
                $"{guard.GetType().Name} is no condition over variables",
                nameof(guard)
            ),
        };

    /// <summary>Just these failures have happened.</summary>
    public Diagram Failed(params IEnumerable<int> failures)
    {
        var happened = failures.ToHashSet();
        return Table.AllOf(
            FailureVariables.Select(v => Code(v, happened.Contains(v) ? 1 - Rest[v] : Rest[v]))
        );
    }

    /// <summary>No more than so many failures have happened.</summary>
    public Diagram AtMostFailed(int most) =>
        Table.AtMost(most, [.. FailureVariables.Select(v => LevelsOf(v).Single())]);

    private Diagram[] ValueDiagrams(Encoding encoding)
    {
        var codes = Enumerable.Range(0, encoding.Values).Select(v => Table.Cube(encoding.Code(v))).ToArray();
        codes[^1] = !Table.AnyOf(codes.SkipLast(1));
        return codes;
    }

    private Diagram DomainOf(Encoding encoding) =>
        Table.AnyOf(Enumerable.Range(0, encoding.Values).Select(v => Table.Cube(encoding.Code(v))));
}
