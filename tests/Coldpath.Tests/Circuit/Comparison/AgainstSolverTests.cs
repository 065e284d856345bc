using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>Networks of 22 to 60 variables, too large to enumerate, against an SMT solver.</summary>
public class AgainstSolverTests
{
    private const int Meshes = 50;
    private const int Nets = 2;
    private const int SetsTried = 3;

    [Fact]
    public void No_assignment_makes_a_net_live_that_the_engine_calls_dead_or_the_contrary()
    {
        foreach (var number in Enumerable.Range(0, Meshes))
        {
            var netlist = RandomMeshes.Mesh(number);
            netlist.Variables.Count.Should().BeInRange(22, 60);
            var space = new StateSpace(netlist);
            var network = new Network(netlist, space);
            var net = netlist.Nets.Where(n => !network.Live(n).IsConstant).ElementAt(number % 9);
            var diagram = new SmtDiagrams(space, [network.Live(net)]);
            Solver
                .Satisfiable(
                    new SmtNetwork(netlist, []).Text + diagram.Text,
                    [$"(xor {SmtNetwork.Live(net)} {SmtDiagrams.Root(0)})"]
                )
                .Should()
                .Equal([false], $"{net} of mesh {number}");
        }
    }

    [Fact]
    public void Isolating_sets_are_enough_and_without_any_one_of_their_isolators_are_not()
    {
        var tried = 0;
        foreach (var number in Enumerable.Range(0, Meshes))
        {
            var netlist = RandomMeshes.Mesh(number);
            var isolators = new Isolators(netlist, new DiagramTable());
            var questions = Some(netlist, number).SelectMany(net => Questions(isolators, net)).ToArray();
            var definitions = new SmtNetwork(netlist, isolators.Acts.Select(a => a.Name)).Text;
            Solver
                .Satisfiable(definitions, questions.Select(q => q.Condition))
                .Should()
                .Equal(questions.Select(q => q.Live), $"mesh {number}");
            tried += questions.Length;
        }
        tried.Should().BeGreaterThan(4 * Meshes);
    }

    /// <summary>The best few sets, each whole and with one isolator left out; all isolators when there is no set.</summary>
    private static IEnumerable<(string Condition, bool Live)> Questions(Isolators isolators, string net)
    {
        var sets = new IsolatingSets(isolators, net);
        if (sets.Count.IsZero)
            yield return (LiveWith(net, isolators.Acts), true);
        foreach (var set in sets.Cheapest(_ => 1).Take(SetsTried))
        {
            yield return (LiveWith(net, set), false);
            foreach (var one in set)
                yield return (LiveWith(net, set.Where(other => other != one)), true);
        }
    }

    private static IEnumerable<string> Some(Netlist netlist, int number)
    {
        var dice = new System.Random(number);
        return Enumerable.Range(0, Nets).Select(_ => netlist.Nets[dice.Next(1, netlist.Nets.Count)]);
    }

    /// <summary>The net is live with these isolators taken out, and perhaps others.</summary>
    private static string LiveWith(string net, IEnumerable<IsolationAct> taken) =>
        $"(and {SmtNetwork.Live(net)} {string.Join(" ", taken.Select(a => SmtNetwork.TakenOut(a.Name)))})";
}
