using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Failures;
using Coldpath.Circuit.Sequence;
using Coldpath.Tests.Circuit.Comparison.Smt;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>
/// Cut sets on panels too large to enumerate, against an SMT solver that knows the netlist and the definitions alone.
/// That a set suffices it replays; that nothing else does it proves by induction: what the engine reached is closed
/// under every move that the solver can find, and no settled state of it shows the hazard without one of the sets.
/// </summary>
public class FailuresAgainstSolverTests(ITestOutputHelper output)
{
    private const int Panels = 60;
    private const int First = 800_000;
    private const int MostAssignments = 1024;
    private const int Hazards = 2;

    [Fact]
    public void No_other_sets_suffice_and_these_do()
    {
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        for (var number = First; counts.GetValueOrDefault(Proved) < Panels; number++)
        {
            var bare = RandomPanels.Panel(number, MostAssignments);
            var netlist = bare.WithFailures(bare.AllFailures().ToHashSet());
            if (!SmtPanel.CanBeTold(netlist))
                continue;
            var behaviour = new Behaviour(netlist, new DiagramTable(), failures: number % 3 == 0 ? 1 : 2);
            var claims = new FailureClaims(behaviour, Questions(number, behaviour));
            var left = claims.LeftOut;
            if (left is null)
                claims.Judge();
            Count(left ?? Proved);
            foreach (var set in left is null ? claims.Sets : [])
                Count($"sets of {set.Members.Count}");
        }
        foreach (var (what, count) in counts)
            output.WriteLine($"{count, 4} {what}");
        counts["sets of 1"].Should().BeGreaterThan(Panels);
        counts["sets of 2"].Should().BeGreaterThan(Panels / 4);

        void Count(string what) => counts[what] = counts.GetValueOrDefault(what) + 1;
    }

    private const string Proved = "panels proved";

    /// <summary>Some at random, and some that only failures bring about.</summary>
    private static Expression[] Questions(int number, Behaviour behaviour)
    {
        var netlist = behaviour.Netlist;
        var dice = new System.Random(number);
        var hazards = new FailureHazards(behaviour);
        Expression[] asked =
        [
            .. new RandomIntents(netlist, dice)
                .All()
                .Where(i => i.Form == IntentForm.Never)
                .Select(i => i.When),
            .. hazards.Standing(behaviour.Space.Failures!.Value),
            .. hazards.Becoming().OrderBy(_ => dice.Next()).Take(Hazards),
        ];
        return [.. asked.Where(when => SmtPanel.CanBeAsked(netlist, when))];
    }
}
