using System.Numerics;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Wiring;

/// <summary>A failure that another stands for makes the same states reachable, and the same loads run in them.</summary>
public class RepeatedFailuresTests
{
    public static TheoryData<string> Names =>
        ["lock-gate-winch", "orchard-well-pump", "stone-saw-capacitor", "snow-making-pump"];

    [Theory]
    [MemberData(nameof(Names))]
    public void DoWhatTheOtherDoes(string name)
    {
        var netlist = Bound(name);
        var repeated = RepeatedFailures.Of(netlist);

        repeated.Should().NotBeEmpty();
        netlist.AllFailures().Should().NotIntersectWith(repeated.Keys).And.Contain(repeated.Values);
        foreach (var (one, other) in repeated)
            Done(netlist, one).Should().Equal(Done(netlist, other), $"{one} is {other}");
    }

    /// <summary>After the failure: how many states there are, and in how many of them each load runs.</summary>
    private static IEnumerable<BigInteger> Done(Netlist netlist, string failure)
    {
        var behaviour = new Behaviour(
            netlist.WithFailures(new HashSet<string> { failure }),
            new DiagramTable(),
            failures: 1
        );
        var after = behaviour.Table.And(
            behaviour.ReachableSettled,
            behaviour.Space.Is(failure, FailureVariable.Yes)
        );
        return
        [
            behaviour.Space.Count(after),
            .. netlist.Loads.Select(l =>
                behaviour.Space.Count(behaviour.Table.And(after, behaviour.Network.Runs(l.Name)))
            ),
        ];
    }

    private static Netlist Bound(string name)
    {
        var text = Samples.Panels.Single(p => p.Name == $"panels/{name}.panel").Text;
        return PanelBinder.Bind(PanelParser.Parse(new SourceText(name, text)), KindLibrary.Standard).Netlist!;
    }
}
