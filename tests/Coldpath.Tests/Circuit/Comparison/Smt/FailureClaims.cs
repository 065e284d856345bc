using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using FluentAssertions;
using static Coldpath.Tests.Circuit.Comparison.Smt.SmtText;

namespace Coldpath.Tests.Circuit.Comparison.Smt;

/// <summary>
/// What the engine says of a panel's failures, as questions to an SMT solver. Where a claim needs a certificate (the
/// states reached, the way from a passing state to a settled one), the engine's own will do: the solver checks it.
/// </summary>
internal sealed class FailureClaims
{
    /// <summary>Characters of definitions, that answers may not take too long.</summary>
    private const int MostText = 200_000;

    private readonly Behaviour behaviour;
    private readonly SmtPanel panel;
    private readonly string reached;
    private readonly string reachedNext;
    private readonly (string Hazard, IReadOnlyList<FailureSet> Sets)[] answers;

    /// <param name="behaviour">Of the panel, with as many failures as may happen.</param>
    /// <param name="hazards">What is asked.</param>
    public FailureClaims(Behaviour behaviour, IEnumerable<Expression> hazards)
    {
        this.behaviour = behaviour;
        panel = new SmtPanel(behaviour.Netlist, behaviour.Space.Failures!.Value);
        (reached, reachedNext) = panel.Among(behaviour.Space, behaviour.Reachable);
        var found = new CutSets(behaviour);
        answers =
        [
            .. hazards.Select(h =>
                (panel.Of(h), found.Of(Table.And(behaviour.Of(h), behaviour.ReachableSettled)))
            ),
        ];
    }

    public IEnumerable<FailureSet> Sets => answers.SelectMany(a => a.Sets);

    private StateSpace Space => behaviour.Space;
    private DiagramTable Table => behaviour.Space.Table;

    /// <summary>Why the solver is not asked about such panels; null when it is.</summary>
    public string? LeftOut =>
        Table.Meet(behaviour.Reachable, behaviour.Settling.Chatter) ? "panels that chatter"
        : panel.Definitions.Text.Length > MostText ? "panels that are too large"
        : panel.BeyondIt != "false" && Ask([And(reached, panel.BeyondIt)])[0]
            ? "panels in which synchronised supplies meet"
        : null;

    /// <summary>Fails when the solver contradicts.</summary>
    public void Judge()
    {
        (string What, string Wrong)[] claims =
        [
            ("the start is reached", WrongStart()),
            ("every move leads to a state reached", And(reached, panel.Moved, Not(reachedNext))),
            ("all settle as they do", WrongSettling()),
            ("every story can be told", WrongStories()),
            .. answers.Select((a, i) => ($"hazard {i} has no other set", Unexplained(a.Hazard, a.Sets))),
        ];
        var needed = Needed().ToArray();
        var told = Ask([Or(claims.Select(c => c.Wrong)), .. needed]);
        if (told[0])
            Contradicted(claims);
        told.Skip(1).Should().NotContain(false, $"each set of {behaviour.Netlist.Panel} is needed");
    }

    private void Contradicted((string What, string Wrong)[] claims) =>
        claims
            .Zip(Ask(claims.Select(c => c.Wrong)), (claim, wrong) => wrong ? claim.What : null)
            .OfType<string>()
            .Should()
            .BeEmpty($"of panel {behaviour.Netlist.Panel}");

    private IReadOnlyList<bool> Ask(IEnumerable<string> questions) =>
        Solver.Satisfiable(panel.Definitions.Text, questions, inlined: true);

    /// <summary>The resting values lead by certain urgent moves to a settled state that was not reached.</summary>
    private string WrongStart()
    {
        var passed = Rested().ToArray();
        var left = And(Or(passed.Select(panel.At)), panel.Followed, Not(Or(passed.Select(panel.NextAt))));
        return Or(left, And(Or(passed.Select(panel.At)), panel.Steady, Not(reached)));
    }

    /// <summary>A reached state is steady and not called settled, or the contrary, or does not lead to a settled one.</summary>
    private string WrongSettling()
    {
        var settled = panel.Among(Space, behaviour.Settling.Settled).Now;
        var wrong = new List<string> { And(settled, Not(panel.Steady)), And(Not(settled), panel.Steady) };
        var near = behaviour.ReachableSettled;
        foreach (var further in Nearer(near))
        {
            var follow = Urgent.Select(t => And(panel.IsCertain(t), panel.Among(Space, Before(t, near)).Now));
            var added = panel.Among(Space, Table.Except(further, near)).Now;
            wrong.Add(And(added, Not(Or(follow))));
            near = further;
        }
        wrong.Add(Not(panel.Among(Space, near).Now));
        return And(reached, Or(wrong));
    }

    private IEnumerable<Transition> Urgent => behaviour.Transitions.Where(t => t.IsUrgent);

    /// <summary>Reached states by how many moves they are from a settled one, more with each.</summary>
    private IEnumerable<Diagram> Nearer(Diagram near)
    {
        while (!Table.Entails(behaviour.Reachable, near))
        {
            var steps = Urgent.Select(t => Table.And(t.Certain, Before(t, near)));
            var further = Table.Or(near, Table.And(behaviour.Reachable, Table.AnyOf(steps)));
            if (further == near)
                yield break;
            yield return near = further;
        }
    }

    /// <summary>States that come to one of these when the move's variable is set as it sets it.</summary>
    private Diagram Before(Transition move, Diagram states) =>
        Table.AndExists(states, Space.Code(move.Variable, move.To), Space.Bits(move.Variable));

    private string WrongStories() =>
        Or(
            answers
                .SelectMany(a => a.Sets.Select(set => (a.Hazard, set)))
                .Select(a => WrongStory(a.Hazard, a.set))
        );

    /// <summary>A step that cannot be made where it is made, or an end that is no settled state of the hazard.</summary>
    private string WrongStory(string hazard, FailureSet set)
    {
        var failed = Space.FailureVariables.Where(v => set.Story.End[v] != Space.Rest[v]);
        failed.Should().Equal(set.Members.Select(m => Space.IndexOf(m.Name)));
        var state = set.Story.Start;
        var wrong = new List<string> { RestsElsewhere(state) };
        foreach (var (move, after) in set.Story.Steps)
        {
            after.Should().Be(state.With(move.Variable, move.To));
            wrong.Add(And(panel.At(state), Not(panel.CanMake(move))));
            state = after;
        }
        return Or(wrong.Append(And(panel.At(state), Not(And(hazard, panel.Steady)))));
    }

    /// <summary>Certain urgent moves do not lead from the resting values to the state.</summary>
    private string RestsElsewhere(State start)
    {
        var wrong = new List<string> { And(panel.At(start), Not(panel.Steady)) };
        for (var at = start; at != Space.Rest; at = came[at].Before)
            wrong.Add(And(panel.At(came[at].Before), Not(panel.IsCertain(came[at].Move))));
        return Or(wrong);
    }

    private readonly Dictionary<State, (State Before, Transition Move)> came = [];

    /// <summary>What the resting values lead to by certain urgent moves, and how.</summary>
    private IEnumerable<State> Rested()
    {
        var found = new List<State> { Space.Rest };
        for (var i = 0; i < found.Count; i++)
            foreach (var move in Urgent.Where(t => Space.Holds(t.Certain, found[i])))
            {
                var after = found[i].With(move.Variable, move.To);
                if (after != Space.Rest && came.TryAdd(after, (found[i], move)))
                    found.Add(after);
            }
        return found;
    }

    /// <summary>A settled state shows the hazard, and none of the sets has failed there.</summary>
    private string Unexplained(string hazard, IEnumerable<FailureSet> sets) =>
        And(reached, panel.Steady, hazard, Not(Or(sets.Select(s => panel.Failed(s.Members)))));

    /// <summary>Without any one of the sets the hazard is not explained.</summary>
    private IEnumerable<string> Needed() =>
        from answer in answers
        let minimal = answer.Sets.DistinctBy(Names).ToArray()
        from left in minimal
        where !minimal.Any(s => s != left && s.Members.All(left.Members.Contains))
        select Unexplained(answer.Hazard, minimal.Where(s => s != left));

    private static string Names(FailureSet set) => string.Join(' ', set.Members.Select(m => m.Name));
}
