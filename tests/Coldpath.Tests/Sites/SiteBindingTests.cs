using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels.Sites;
using FluentAssertions;

namespace Coldpath.Tests.Sites;

/// <summary>What a site takes in, what it joins, and what it says when it cannot.</summary>
public class SiteBindingTests
{
    private const string Header = """
        site "Test"
          rules   NEC
          system  480 V 3-phase 60 Hz, solidly earthed wye


        """;

    private const string Panel = """
        panel "Fed"
          rules   NEC
          system  480 V 3-phase 60 Hz, solidly earthed wye

        supply          MAINS 480Y/277 V
        disconnect      Q1    60 A, lockable
        motor           M1    20 hp 460 V, 27 A
        terminal strip  X1

        MAINS[L1, L2, L3] -> Q1 -> M1
        X1:1 -> X1:2

        """;

    private static readonly Dictionary<string, string> Files = new(StringComparer.Ordinal)
    {
        ["fed.panel"] = Panel,
        ["low.panel"] = Panel.Replace("480", "208").Replace("277", "120").Replace("460 V", "200 V"),
        ["board.panel"] = Panel.Replace("MAINS", "UTIL").Replace("-> Q1 -> M1", "-> Q1"),
        ["kinds.panel"] =
            "kind black box\n  means \"a box\"\n  line side [1]\n  load side [2]\n  conductor [1 - 2]\nend\n",
        ["loop.panel"] = "include \"again.panel\"\n",
        ["again.panel"] = "include \"loop.panel\"\n",
        ["nested.panel"] = Header + "include \"fed.panel\" as P1\n",
    };

    private static BoundSite Bind(string lines)
    {
        var source = Source("site.panel", Header + lines);
        return SiteBinder.Bind(PanelParser.Parse(source), KindLibrary.Standard);
    }

    private static SourceText Source(string name, string text) =>
        new(name, text)
        {
            Beside = file =>
                Files.TryGetValue(file, out var beside)
                    ? new IncludedText(Source(file, beside))
                    : new IncludedText(null, "there is no such file"),
        };

    private static string[] Messages(string lines) => [.. Bind(lines).Findings.Select(f => f.Message)];

    [Fact]
    public void One_file_is_taken_in_once_for_each_tag()
    {
        var site = Bind("include \"fed.panel\" as P1, P2\ninclude \"board.panel\" as B0\n").Site!;
        site.Members.Select(m => m.Tag).Should().Equal("P1", "P2", "B0");
        site.Members[0].Bound.Should().BeSameAs(site.Members[1].Bound);
    }

    [Fact]
    public void A_supply_is_joined_conductor_by_conductor()
    {
        var site = Bind(
            "include \"board.panel\" as B0\ninclude \"fed.panel\" as P1\nB0/Q1 -> P1/MAINS[L1, L2, L3]\n"
        ).Site!;
        var joints = site.Joints.Where(j => j.Ends.Count == 2).ToArray();
        joints.Should().HaveCount(3);
        joints[0]
            .Ends.Select(e => $"{e.Member.Tag}/{e.Terminal}")
            .Should()
            .Equal("B0/Q1:2/T1", "P1/MAINS:L1");
        joints[0].Ends.Select(e => e.FeedsSupply).Should().Equal(false, true);
    }

    [Theory]
    [InlineData("include \"missing.panel\" as P1\n", "cannot read missing.panel: there is no such file")]
    [InlineData(
        "include \"fed.panel\"\n",
        "fed.panel describes a panel, and what it is called here is not said"
    )]
    [InlineData(
        "include \"nested.panel\" as S1\n",
        "nested.panel includes panels itself, and a site cannot hold another site"
    )]
    [InlineData("include \"fed.panel\" as P1, P1\n", "there is a panel P1 already")]
    [InlineData("include \"site.panel\" as P1\n", "cannot read site.panel: there is no such file")]
    [InlineData(
        "include \"fed.panel\" as P1\nP1/X1:7 -> P1/X1:1\n",
        "P1/X1:7 is not used in fed.panel, so nothing there is joined by it"
    )]
    [InlineData("include \"fed.panel\" as P1\nP1/X1:1 -> P1/Q9:1\n", "P1/Q9 is not declared")]
    public void A_mistake_is_told(string lines, string message) => Messages(lines).Should().Contain(message);

    [Fact]
    public void Files_in_a_loop_are_told() =>
        Messages("include \"loop.panel\"\ninclude \"fed.panel\" as P1\n")
            .Should()
            .Contain(
                "the files include each other in a loop: site.panel → loop.panel → again.panel → loop.panel"
            );

    [Fact]
    public void A_chain_does_not_pass_through_another_panels_device() =>
        Messages("include \"fed.panel\" as P1, P2\nP1/X1:1 -> P2/Q1[1/L1] -> P1/X1:2\n")
            .Should()
            .Contain("P2/Q1 is a device of another panel, and a chain of the site cannot pass through it");

    [Fact]
    public void A_conductor_that_is_not_joined_is_missed() =>
        Messages("include \"fed.panel\" as P1\nsupply G1 480Y/277 V\nG1[L1, L2] -> P1/MAINS[L1, L2]\n")
            .Should()
            .Contain("P1/MAINS is fed by the site, but nothing is joined to its L3");

    [Fact]
    public void Kinds_come_from_files_of_kinds() =>
        Messages(
                "include \"kinds.panel\"\ninclude \"fed.panel\" as P1\nblack box Z1\nP1/X1:1 -> Z1 -> P1/X1:2\n"
            )
            .Should()
            .BeEmpty();

    [Theory]
    [InlineData("B0/Q1 -> P1/MAINS[L1, L2, L3]\n", "fed.panel", null)]
    [InlineData(
        "B0/Q1 -> P1/MAINS[L1, L3, L2]\n",
        "fed.panel",
        "B0/UTIL reaches P1/MAINS in another phase order, or may"
    )]
    [InlineData(
        "B0/Q1 -> P1/MAINS[L1, L2, L3]\n",
        "low.panel",
        "B0/UTIL brings 480 V to P1/MAINS, which is described for 208 V"
    )]
    public void What_arrives_has_to_fit(string joint, string file, string? message)
    {
        var text = Header + $"include \"board.panel\" as B0\ninclude \"{file}\" as P1\n" + joint;
        var plan = CheckPlan.Of(Source("site.panel", text), CancellationToken.None, failures: 0);
        var unfit = plan
            .Pieces.SelectMany(p => p.Check().Findings)
            .Where(f => f.Name == "supply-unfit")
            .Select(f => f.Message);
        unfit.Should().Equal(message is null ? [] : [message]);
    }
}
