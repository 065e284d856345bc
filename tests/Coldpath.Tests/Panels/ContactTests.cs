using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Panels;

public class ContactTests
{
    private const string Control = """
        contactor K1
        contactor K2
        relay K0
        overload F3
        selector S1 HAND OFF AUTO
        stop button S0
        push button S3
        lamp P1
        strip X1

        """;

    [Fact]
    public void Contacts_take_the_next_free_number_of_their_device()
    {
        var (panel, netlist) = Bound.Good(
            Control
                + """
                rung 1 node 1 -> S0 -> node 2
                rung 2 2 -> ( S3 | NO K1 ) -> NC K2 -> coil K1 -> node 3
                rung 3 2 -> NC K1 -> NO K1 -> K1:21-22 -> coil K2 -> 3
                """
        );
        panel.Find("K1")!.Contacts.Select(c => c.Name).Should().Equal("13-14", "21-22", "31-32", "43-44");
        panel.AllocatedContacts.Values.Should().Equal("13-14", "11-12", "31-32", "43-44");
        netlist.Elements.Select(e => e.Id).Should().Contain(["S0.11-12", "S3.13-14", "K1.43-44", "K2.11-12"]);
        netlist.Variables.Should().Contain(v => v.Name == "K1.weld43-44");
        netlist.ShouldJoin("K1:14", "S3:14", "K2:11");
        netlist.ShouldJoin("K2:12", "K1:A1");
    }

    [Fact]
    public void Sort_and_number_must_agree()
    {
        var finding = Bound.Any(Control + "rung 1 node 1 -> NC K1:13-14 -> node 2\n").Findings.Single();
        finding.Message.Should().Be("K1:13-14 is a contact of the sort NO, not NC");
        finding.Location.Text.Should().Be("NC K1:13-14");
    }

    [Fact]
    public void Fixed_contacts_are_named_by_sort_or_number()
    {
        var (_, netlist) = Bound.Good(Control + "rung 1 node 1 -> F3:95-96 -> node 2 -> NO F3 -> node 3\n");
        netlist.ShouldJoin("1", "F3:95");
        netlist.ShouldJoin("2", "F3:96", "F3:97");
        var wrong = Bound.Any(Control + "rung 1 node 1 -> NO F3:95-96 -> node 2\n");
        wrong.Findings.Should().ContainSingle().Which.Name.Should().Be("contact-conflict");
    }

    [Fact]
    public void Selector_contacts_close_where_they_are_said_to()
    {
        var (panel, netlist) = Bound.Good(
            Control
                + "rung 1 node 1 -> ( S1 at HAND | S1 at AUTO or HAND -> K1:13-14 ) -> coil K1 -> node 2\n"
        );
        panel
            .Find("S1")!
            .Contacts.Select(c => string.Join('+', c.Positions))
            .Should()
            .Equal("HAND", "HAND+AUTO");
        netlist.ShouldJoin("1", "S1:13", "S1:23");
    }

    [Fact]
    public void An_unknown_position_is_named_with_those_there_are()
    {
        var finding = Bound.Any(Control + "rung 1 node 1 -> S1 at HANDY -> P1 -> node 2\n").Findings.Single();
        finding.Message.Should().Be("S1 has no position HANDY; it has HAND, OFF, AUTO");
        finding.Remedy.Should().Be("did you mean HAND?");
        finding.Location.Text.Should().Be("HANDY");
    }

    [Theory]
    [InlineData("rung 1 node 1 -> K1 -> node 2", "K1")]
    [InlineData("rung 1 node 1 -> K0 -> node 2", "K0")]
    [InlineData("node 1 -> K0", "K0")]
    public void A_bare_contactor_or_relay_is_refused(string rung, string device)
    {
        var finding = Bound.Any(Control + rung + "\n").Findings.Should().ContainSingle().Subject;
        finding.Name.Should().Be("coil-or-contact");
        finding.Location.Text.Should().Be(device);
        finding.Remedy.Should().StartWith($"write coil {device} or NO {device}");
    }

    [Fact]
    public void A_contact_used_in_two_chains_is_a_fact_and_no_binding_error()
    {
        var (panel, _) = Bound.Good(
            Control + "rung 1 node 1 -> K1:13-14 -> P1 -> node 2\nrung 2 1 -> K1:13-14 -> coil K2 -> 2\n"
        );
        var uses = panel.PartUses().Where(u => u.Device == "K1").ToList();
        uses.Select(u => $"{u.Left}-{u.Right}").Should().Equal("13-14", "13-14");
        uses.Select(u => u.Chain.Rung).Should().Equal("1", "2");
    }

    [Fact]
    public void Terminals_named_in_wires_make_the_contact_between_them()
    {
        var (panel, netlist) = Bound.Good(
            Control + "wire 5: K0:11, X1:1\nwire 6: K0:12, X1:2\nwire 7: K0:14\n"
        );
        panel.Find("K0")!.Contacts.Select(c => c.Name).Should().Equal("11-12", "11-14");
        netlist.ShouldPart("K0:11", "K0:12", "K0:14");
        netlist.ShouldJoin("K0:11", "X1:1");
    }

    [Fact]
    public void A_chain_that_begins_at_a_contact_taps_the_only_one_in_use()
    {
        var (panel, netlist) = Bound.Good(
            Control + "rung 1 node 1 -> S0 -> coil K1 -> node 2\nrung 2 S0 -> P1 -> 2\n"
        );
        panel.Find("S0")!.Contacts.Should().ContainSingle();
        netlist.ShouldJoin("S0:12", "K1:A1", "P1:X1");
    }

    [Fact]
    public void A_contact_written_the_other_way_round_is_wired_so()
    {
        var (_, netlist) = Bound.Good(Control + "rung 1 node 1 -> K1:14-13 -> P1 -> node 2\n");
        netlist.ShouldJoin("1", "K1:14");
        netlist.ShouldJoin("K1:13", "P1:X1");
    }
}
