using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;

namespace Coldpath.Circuit.Failures;

/// <summary>What of an answer the sound panel does not show when the same is done to it.</summary>
/// <param name="space">The states.</param>
/// <param name="showing">What is seen of them.</param>
/// <param name="sound">What the sound panel may show before and after.</param>
internal sealed class Signs(StateSpace space, Showing showing, Diagram sound)
{
    private DiagramTable Table => space.Table;

    /// <param name="before">Where the response begins.</param>
    /// <param name="steps">What is done and follows.</param>
    public IReadOnlyList<Sign> Of(State before, IReadOnlyList<Step> steps)
    {
        var end = steps.Count == 0 ? before : steps[^1].After;
        var done = steps.Where(IsDone).Select(s => s.Move.Variable).Intersect(showing.Parts).ToArray();
        var told = Likenesses(before, end, done)
            .Where(likeness => !likeness.Answers.IsFalse)
            .Select(likeness => Told(likeness.Answers, [.. At(end, showing.Parts.Except(likeness.Same))]))
            // The sound panel does not let it be done at all.
            .FirstOrDefault(done.Select(v => PartAt(v, end)));
        return [.. told.Select(seen => seen.Sign(before))];
    }

    /// <summary>
    /// What the sound panel shows after the same is done, and what is the same: from where it shows the same before; if
    /// it never does, from where what can be moved stands the same; if it never does, from anywhere.
    /// </summary>
    private IEnumerable<(Diagram Answers, IReadOnlyCollection<int> Same)> Likenesses(
        State before,
        State end,
        int[] done
    )
    {
        var stays = showing.Parts.Where(v => before[v] == end[v] && showing.Stays(v, end[v]));
        var same = done.Concat(stays).Where(v => Table.Meet(sound, space.Code(v, end[v]))).ToArray();
        var after = Table.And(sound, After(same));
        yield return (Table.And(after, showing.BeforeOf(before)), same);
        yield return (Table.And(after, showing.Before(before, same.Where(showing.IsInput))), same);
        yield return (Table.And(sound, After(done)), done);

        Diagram After(IEnumerable<int> parts) => Table.AllOf(parts.Select(v => space.Code(v, end[v])));
    }

    private IEnumerable<Seen> At(State end, IEnumerable<int> parts) =>
        [.. showing.Loads.Index().Select(l => LoadAt(l.Index, end)), .. parts.Select(v => PartAt(v, end))];

    /// <summary>What no answer shows; else what none shows with all the rest; else all that some do not show.</summary>
    private IEnumerable<Seen> Told(Diagram answers, Seen[] end)
    {
        var never = end.Where(seen => !Table.Meet(answers, seen.So)).ToArray();
        if (never.Length > 0)
            return never;
        var odd = end.Where(seen => IsOdd(seen)).ToArray();
        return odd.Length > 0 ? odd : end.Where(seen => !Table.Except(answers, seen.So).IsFalse);

        bool IsOdd(Seen one) =>
            !Table.AllOf(end.Where(other => other != one).Select(other => other.So).Append(answers)).IsFalse;
    }

    private Seen LoadAt(int load, State end)
    {
        var runs = showing.Runs(load, end);
        return new(showing.RunsAfter(load, runs), _ => new LoadSign(showing.Loads[load], runs));
    }

    private Seen PartAt(int variable, State end)
    {
        var value = end[variable];
        return new(
            space.Code(variable, value),
            before => new PartSign(space.Variables[variable], value, Stays(before))
        );

        bool Stays(State before) =>
            before[variable] == value && (before != end || space.Rest[variable] == value);
    }

    private static bool IsDone(Step step) =>
        step.Move.Cause is Cause.Operator or Cause.Process or Cause.Trip or Cause.Condition;

    /// <summary>Something seen at the end.</summary>
    /// <param name="So">Answers that show it.</param>
    /// <param name="Sign">It in words, given where the response began.</param>
    private sealed record Seen(Diagram So, Func<State, Sign> Sign);
}
