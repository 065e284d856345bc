using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Inspection;

/// <summary>A check that runs out of room says so.</summary>
public sealed class CutShortTests
{
    private static readonly SourceText Source = new(
        "quarry",
        File.ReadAllText(Path.Combine(Samples.Root, "panels/quarry-pump-bypass.panel"))
    );

    [Theory]
    [InlineData(1_000)]
    [InlineData(3_000)]
    [InlineData(20_000)]
    public void A_check_without_room_is_not_complete_and_throws_nothing(int nodes)
    {
        var opened = Opened.From(Source, CancellationToken.None);
        var netlist = opened.Evidence!.Netlist;
        var behaviour = new Behaviour(netlist.WithoutFailures(), new DiagramTable(nodes));
        var evidence = new Evidence(
            Source,
            opened.Evidence.Panel,
            netlist,
            behaviour,
            0,
            CancellationToken.None
        );
        var report = Inspector.Inspect(evidence, CancellationToken.None);
        report.Complete.Should().BeFalse();
        report.Incomplete.Should().NotBeEmpty();
    }
}
