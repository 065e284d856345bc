namespace Coldpath.Circuit.Sequence;

/// <summary>The ways of one variable to some of its values, over the values between, by its own moves.</summary>
internal sealed class Route
{
    private readonly int[] distance;

    /// <param name="transitions">All there are.</param>
    /// <param name="variable">Whose way it is.</param>
    /// <param name="values">How many values it has.</param>
    /// <param name="targets">The values it is to come to.</param>
    public Route(IEnumerable<Transition> transitions, int variable, int values, IEnumerable<int> targets)
    {
        var own = transitions.Where(t => t.Variable == variable && t.Cause != Cause.Short).ToArray();
        distance = new int[values];
        Array.Fill(distance, int.MaxValue);
        foreach (var target in targets)
            distance[target] = 0;
        for (var at = 0; at < values; at++)
            foreach (var move in own.Where(t => distance[t.To] == at))
                distance[move.From] = Math.Min(distance[move.From], at + 1);
        Closer = [.. own.Where(t => distance[t.To] < distance[t.From])];
    }

    /// <summary>The moves that shorten the way, in declared order.</summary>
    public IReadOnlyList<Transition> Closer { get; }

    /// <summary>How many moves the way from the value takes; <see cref="int.MaxValue"/> when there is none.</summary>
    public int From(int value) => distance[value];
}
