using System.Text.Json;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.States;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>
/// All states of a small panel, numbered with the first variable weighing most, and sets of them as the interpreter
/// writes them: hexadecimal bytes, the first state in the lowest bit.
/// </summary>
internal sealed class Bits(StateSpace space)
{
    private readonly (State State, bool[] Levels)[] all =
    [
        .. States(space).Select(s => (s, space.Assignment(s))),
    ];

    public int Count => all.Length;

    public IEnumerable<State> All => all.Select(s => s.State);

    public State this[int index] => all[index].State;

    public int IndexOf(State state) =>
        space.Variables.Index().Aggregate(0, (at, v) => at * v.Item.Values.Count + state[v.Index]);

    /// <summary>The first state in which the two differ; -1 when none does.</summary>
    public int FirstDifference(Diagram mine, JsonElement hex)
    {
        var theirs = Convert.FromHexString(hex.GetString()!);
        for (var i = 0; i < all.Length; i++)
            if (space.Table.Evaluate(mine, all[i].Levels) != ((theirs[i >> 3] >> (i & 7) & 1) != 0))
                return i;
        return -1;
    }

    private static IEnumerable<State> States(StateSpace space)
    {
        IEnumerable<int[]> states =
        [
            [],
        ];
        foreach (var variable in space.Variables)
            states = states.SelectMany(s =>
                Enumerable.Range(0, variable.Values.Count).Select(v => (int[])[.. s, v])
            );
        return states.Select(s => new State(s));
    }
}
