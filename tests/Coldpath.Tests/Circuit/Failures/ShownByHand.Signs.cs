using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Failures;

/// <summary>What then is not as it would be: the answers of the sound panel listed one by one.</summary>
internal sealed partial class ShownByHand
{
    /// <summary>The story can be told as it is, and ends as no sound panel does.</summary>
    public bool Tells(Story story, int failure)
    {
        var state = story.Start;
        foreach (var (move, after) in story.Steps)
        {
            if (!Made(state, mayFail: true).Any(m => m.Sure && m.Move.Cause == move.Cause && m.To == after))
                return false;
            state = after;
        }
        return Rest.Contains(story.Start)
            && Responses(story).Any(r => !Open(r.Before) && Tells(r.Before, failure)(state));
    }

    /// <summary>The signs of a story's last answer, for each state in which that may have begun.</summary>
    public IEnumerable<IReadOnlyList<Sign>> Signs(Story story) =>
        Responses(story).Select(r => (IReadOnlyList<Sign>)[.. Signs(r.Before, r.Steps)]);

    /// <summary>The ends of a story that are one operation at most and what follows it.</summary>
    private IEnumerable<(State Before, Step[] Steps)> Responses(Story story)
    {
        State[] states = [story.Start, .. story.Steps.Select(s => s.After)];
        for (var i = 0; i < states.Length; i++)
            if (Quiet(states[i]) && !story.Steps.Skip(i + 1).Any(s => !Follows(s.Move)))
                yield return (states[i], [.. story.Steps.Skip(i)]);
    }

    private static bool Follows(Transition t) => t.IsUrgent || t.Cause == Cause.Delay;

    private Sign[] Signs(State before, Step[] steps)
    {
        var seen = panel.Space.Variables.Index().Where(v => IsSeen(v.Item)).Select(v => v.Index).ToArray();
        var loads = panel.Netlist.Loads.Where(l => l.Modes.Count > 0).ToArray();
        var end = steps.Length == 0 ? before : steps[^1].After;
        var done = steps
            .Where(s => s.Move.Cause is Cause.Operator or Cause.Process or Cause.Trip or Cause.Condition)
            .Select(s => s.Move.Variable)
            .Where(seen.Contains)
            .Distinct()
            .ToArray();
        var answers = sound.Select(a => (Before: Numbers(a.Item1), After: Numbers(a.Item2))).ToArray();
        var (was, isNow) = (Numbers(Looks(before).Single()), Numbers(Looks(end).Single()));
        var same = done.Concat(seen.Where(v => was[At(v)] == isNow[At(v)] && StaysPut(v, end[v])))
            .Where(v => answers.Any(a => a.After[At(v)] == isNow[At(v)]))
            .ToHashSet();
        var after = answers.Where(a => same.All(v => a.After[At(v)] == isNow[At(v)])).ToArray();
        var moved = same.Where(IsInput).ToArray();
        if (after.Where(a => a.Before.SequenceEqual(was)).ToArray() is { Length: > 0 } alike)
            return Odd(alike, same);
        if (after.Where(a => moved.All(v => a.Before[At(v)] == was[At(v)])).ToArray() is { Length: > 0 } near)
            return Odd(near, same);
        if (
            answers.Where(a => done.All(v => a.After[At(v)] == isNow[At(v)])).ToArray() is { Length: > 0 } any
        )
            return Odd(any, [.. done]);
        return [.. done.Select(v => PartSign(v))];

        int At(int variable) => Array.IndexOf(seen, variable);

        Sign[] Odd((int[] Before, int[] After)[] alike, HashSet<int> same)
        {
            int[] places =
            [
                .. Enumerable.Range(seen.Length, loads.Length),
                .. seen.Where(v => !same.Contains(v)).Select(At),
            ];
            var never = places.Where(p => alike.All(a => a.After[p] != isNow[p])).ToArray();
            var alone = places
                .Where(p => alike.Any(a => places.Where(o => o != p).All(o => a.After[o] == isNow[o])))
                .ToArray();
            var some = places.Where(p => alike.Any(a => a.After[p] != isNow[p])).ToArray();
            var told =
                never.Length > 0 ? never
                : alone.Length > 0 ? alone
                : some;
            return
            [
                .. told.Select(p =>
                    p < seen.Length
                        ? PartSign(seen[p])
                        : new LoadSign(loads[p - seen.Length].Name, isNow[p] == 1)
                ),
            ];
        }

        Sign PartSign(int variable)
        {
            var value = end[variable];
            var stays = before[variable] == value && (before != end || panel.Space.Rest[variable] == value);
            return new PartSign(panel.Space.Variables[variable], value, stays);
        }
    }

    private static int[] Numbers(string look) =>
        [.. look.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(int.Parse)];

    private bool IsInput(int variable) =>
        panel.Space.Variables[variable].Moves.Any(m => m.By is Mover.Operator or Mover.Process);

    private bool StaysPut(int variable, int value)
    {
        var part = panel.Space.Variables[variable];
        return IsInput(variable)
            && part.Moves.All(m => m.From != part.Values[value] || m.By is not (Mover.Settle or Mover.Delay));
    }
}
