using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Panels;

/// <summary>What keeps large inputs cheap, and that it changes no answer.</summary>
public class LargePanelTests
{
    [Theory]
    [InlineData(999)]
    [InlineData(30_000)]
    public void Of_many_mistakes_the_first_thousand_are_said_in_order(int mistakes)
    {
        var result = Bind(Repeat(i => $"K{i}:1 -> K{i}:2\n", mistakes));
        result.Netlist.Should().BeNull();
        result.Findings.Count.Should().Be(Limits.Findings);
        result.Findings[^1].Code.Should().Be("X024");
        result
            .Findings.Where(f => f.Code == "P001")
            .Take(100)
            .Select(f => f.Message)
            .Should()
            .Equal(Enumerable.Range(0, 100).Select(i => $"K{i / 2} is not declared"));
    }

    [Fact]
    public void A_broken_declaration_after_many_mistakes_still_spoils_the_panel()
    {
        var wrong = Repeat(i => $"fuse F{i} 2 A, clas J\n", 11_000);
        Bind(wrong + "rung 1 node 1 -> F1 -> node 2\n").Netlist.Should().BeNull();
    }

    [Fact]
    public void Devices_of_one_kind_and_rating_share_a_blueprint()
    {
        var panel = Bind(
            "fuse F1 2 A, in \"panel\"\nfuse F2 and F3 2 A, in \"door\"\nfuse F4 4 A\nfuse F5 2.0 A\n"
        ).Panel;
        var blueprints = panel.Devices.Where(d => d.Tag[0] == 'F').Select(d => d.Blueprint).ToList();
        blueprints[..3].Distinct(ReferenceEqualityComparer.Instance).Should().ContainSingle();
        blueprints[3].Ratings.Should().NotEqual(blueprints[0].Ratings);
        panel.Devices.Single(d => d.Tag == "F3").Place.Should().Be("door");
    }

    [Fact]
    public void What_is_said_of_a_rating_is_said_of_each_device()
    {
        var messages = Bind("fuse F1 2 A, clas J\nfuse F2 2 A, clas J\n")
            .Findings.Select(f => f.Location.Start);
        messages.Distinct().Should().HaveCountGreaterThan(1);
    }

    private static string Repeat(Func<int, string> line, int count) =>
        string.Concat(Enumerable.Range(0, count).Select(line));

    private static BoundResult Bind(string lines)
    {
        const string header = """
            panel "Large"
              rules   IEC
              system  400 V 3-phase 50 Hz, TN-S
            supply MAINS 400Y/230 V, available 10 kA

            """;
        return PanelBinder.Bind(
            PanelParser.Parse(new SourceText("large.panel", header + lines)),
            KindLibrary.Standard
        );
    }
}
