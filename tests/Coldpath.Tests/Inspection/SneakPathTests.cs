using Coldpath.Findings;
using Coldpath.Inspection;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Inspection;

/// <summary>The six ways in which current comes where nobody meant it to, each on a small panel, with what parts them again.</summary>
public sealed class SneakPathTests
{
    private const string Battery = """
        panel "sneak"
          rules  IEC
          system 24 V dc, unearthed

        supply         G0 24 V dc, available 1 kA
        disconnect     Q0 10 A, poles 2, lockable, visible break
        fuse           F1 and F2 2 A, interrupting 10 kA
        push button    S1 and S2 and S3 start
        relay          K1 coil 24 V DC, burden 10 VA
        relay          K2 and K3 coil 24 V DC, burden 1 VA
        lamp           P1 and P2 red, 24 V DC, burden 5 VA, filament
        diode          R1 and R2

        G0 -> Q0
        Q0[L+] -> F1 -> rail 1
        Q0[L-] -> F2 -> rail 2

        """;

    [Fact]
    public void A_coil_fed_through_a_lamp()
    {
        var finding = Sneak(
            "K2",
            Battery,
            "1 -> S1 -> node 10",
            "10 -> coil K1 -> 2",
            "10 -> P1 -> node 11",
            "1 -> S2 -> 11",
            "11 -> coil K2 -> 2"
        );

        finding.Message.Should().Be("K2 may pull in by current that comes through P1");
        Told(finding).Should().Contain("the solver finds 19 to 24 V across coil K2 (80 to 99 % of 24 V)");
        Along(finding).Should().Contain(["G0 L+", "S1:13-14", "P1:X1-X2", "K2:A1-A2", "G0 L-"]);
    }

    /// <summary>The lamp's diode keeps the current out: then nothing reaches the coil at all.</summary>
    [Fact]
    public void A_blocking_diode_parts_the_two()
    {
        string[] rungs =
        [
            "1 -> S1 -> node 10",
            "10 -> coil K1 -> 2",
            "10 -> P1 -> node 12 -> R1:K-A -> node 11",
            "1 -> S2 -> 11",
            "11 -> coil K2 -> 2",
        ];

        Sneaks(Battery, rungs).Should().NotContain(f => f.Devices[0] == "K2");
        rungs[2] = "10 -> P1 -> node 12 -> R1:A-K -> node 11";
        Sneaks(Battery, rungs).Should().Contain(f => f.Devices[0] == "K2");
    }

    [Fact]
    public void Reverse_current_through_a_contact()
    {
        var finding = Sneak(
            "K2",
            Battery,
            "1 -> S1 -> node 10",
            "10 -> coil K1 -> 2",
            "1 -> S2 -> node 20",
            "20 -> coil K2 -> 2",
            "20 -> NO K3 -> 10",
            "1 -> S3 -> coil K3 -> 2"
        );

        finding.Message.Should().Be("K2 pulls in by current that flows backwards through K3:13-14");
        finding.Severity.Should().Be(Severity.Defect);
        Along(finding).Should().ContainInOrder("S1:13-14", "K3:14-13", "K2:A1-A2");
        Sneaks(
                Battery,
                "1 -> S1 -> node 10",
                "10 -> coil K1 -> 2",
                "1 -> S2 -> node 20",
                "20 -> coil K2 -> 2",
                "20 -> NO K3 -> R1 -> 10",
                "1 -> S3 -> coil K3 -> 2"
            )
            .Should()
            .BeEmpty("a diode in series with the contact lets current through in one direction only");
    }

    [Fact]
    public void A_lost_common_return()
    {
        var panel = Battery + "knife terminal X9\n";
        string[] rungs =
        [
            "1 -> S1 -> coil K1 -> node 20",
            "1 -> S2 -> node 12",
            "12 -> P1 -> 20",
            "12 -> coil K2 -> 2",
            "20 -> X9 -> 2",
        ];

        var finding = Sneak("K2", panel, rungs);

        finding.Message.Should().Be("K2 may pull in by current that comes through K1 and P1");
        Told(finding).Should().Contain("open X9");
        Along(finding).Should().ContainInOrder("K1:A1-A2", "P1:X2-X1", "K2:A1-A2");
        rungs[^1] = "20 -> 2";
        Sneaks(panel, rungs).Should().BeEmpty("the return is whole");
    }

    [Fact]
    public void A_coil_fed_backwards_through_a_transformer()
    {
        const string Panel = """
            panel "sneak"
              rules  NEC
              system 480 V 3-phase 60 Hz, solidly earthed wye

            supply              MAINS 480Y/277 V, available 10 kA
            disconnect          Q0  63 A, lockable, visible break
            fuse                F1 and F2 and F3 and F4 2 A, interrupting 50 kA
            control transformer T1  480 V to 120 V, 160 VA
            control supply      G2  120 V unearthed
            selector            S9  OFF | TEST
            relay               K5  coil 480 V

            MAINS[L1, L2, L3] -> Q0
            Q0[L1] -> F1 -> node H1
            Q0[L2] -> F2 -> node H4
            H1 -> T1:H1
            H4 -> T1:H4
            H1 -> coil K5 -> H4
            T1:X1 -> rail 1
            T1:X2 -> rail 2
            G2[L] -> F3 -> S9 at TEST -> 1
            G2[N] -> F4 -> 2

            """;

        var finding = Sneak("K5", Panel);

        finding.Message.Should().Be("K5 pulls in by current that comes through T1");
        finding.Severity.Should().Be(Severity.Defect);
        Told(finding).Should().Contain("the solver finds 480 V across coil K5 (100 % of 480 V)");
        Along(finding).Should().ContainInOrder("G2 L", "S9:13-14", "T1", "K5:A1-A2", "T1", "G2 N");
    }

    [Fact]
    public void A_tie_between_two_supplies()
    {
        const string Panel = """
            panel "sneak"
              rules  IEC
              system 24 V dc, unearthed

            control supply G1 and G2 24 V DC unearthed
            knife terminal X1
            push button    S1 start
            relay          K1 coil 24 V DC, burden 10 VA
            relay          K2 coil 24 V DC, burden 1 VA
            lamp           P1 red, 24 V DC, burden 5 VA, filament

            G1[L+] -> rail 1
            G2[L+] -> X1 -> rail 3
            G1[L-] -> rail 2
            1 -> S1 -> coil K1 -> 2
            3 -> coil K2 -> 2
            1 -> P1 -> 3

            """;

        var finding = Sneak("K2", Panel, "G2[L-] -> 2");

        finding.Message.Should().EndWith("by current that comes through P1");
        Along(finding).Should().ContainInOrder("G1 L+", "P1:X1-X2", "K2:A1-A2", "G1 L-");
    }

    /// <summary>The lamps' common return is switched over to plus for the test: then they are lit through the coils.</summary>
    [Fact]
    public void A_lamp_test_through_the_lamps()
    {
        var finding = Sneak(
            "K2",
            Battery + "push button S9\n",
            "1 -> S1 -> node 21 -> coil K1 -> 2",
            "21 -> P1 -> node T",
            "1 -> S2 -> node 22 -> coil K2 -> 2",
            "22 -> P2 -> T",
            "T -> NC S9 -> 2",
            "1 -> NO S9 -> T"
        );

        finding.Message.Should().Be("K2 may pull in by current that comes through P2");
        Along(finding).Should().ContainInOrder("P2:X2-X1", "K2:A1-A2");
    }

    /// <summary>With the return lost the lamp hangs on the plus side of the other rung's coil, and burns through it.</summary>
    [Fact]
    public void A_lamp_lit_backwards_through_a_coil()
    {
        var panel =
            Battery
                .Replace("burden 5 VA, filament", "burden 0.5 VA, filament")
                .Replace("K2 and K3 coil 24 V DC, burden 1 VA", "K2 coil 24 V DC, burden 20 VA")
            + "knife terminal X9\n";
        string[] rungs =
        [
            "1 -> S1 -> P1 -> node 20",
            "1 -> S2 -> coil K2 -> 20",
            "20 -> X9 -> 2",
            "1 -> S3 -> P2 -> 2",
            "20 -> coil K1 -> 2",
        ];

        var finding = Sneak("P1", panel, rungs);

        finding.Message.Should().Be("P1 is lit by current that comes through K1");
        Told(finding).Should().Contain(t => t.Contains("V across lamp P1"));
        Sneaks(panel, "1 -> S1 -> P1 -> coil K1 -> 2", "1 -> S2 -> coil K2 -> 2")
            .Should()
            .BeEmpty("a lamp in the rung of a coil watches it");
    }

    /// <summary>Pressed, the lamp leaves its signal for the test supply: no current comes back to the signal's coil.</summary>
    [Fact]
    public void Push_to_test_lamps_are_parted_from_their_signal()
    {
        var panel = Battery + "push-to-test lamp P9 24 V DC\n";
        Sneaks(panel, "1 -> S1 -> node 21 -> coil K1 -> 2", "21 -> P9 -> 2", "1 -> P9:X3").Should().BeEmpty();
    }

    /// <summary>Through a lamp that takes more than the coil, or less: what is given decides.</summary>
    [Theory]
    [InlineData("burden 0.5 VA, LED", "burden 6 VA", null)]
    [InlineData("burden 50 VA, filament", "burden 1 VA", Severity.Defect)]
    [InlineData("burden 5 VA, filament", "burden 1 VA", Severity.Caution)]
    public void The_burdens_decide(string lamp, string coil, Severity? severity)
    {
        var panel = Battery
            .Replace("P1 and P2 red, 24 V DC, burden 5 VA, filament", $"P1 red, 24 V DC, {lamp}")
            .Replace("K2 and K3 coil 24 V DC, burden 1 VA", $"K2 coil 24 V DC, {coil}");

        var findings = Sneaks(panel, "1 -> S1 -> node 10 -> P1 -> node 11 -> coil K2 -> 2", "1 -> S2 -> 11");

        findings
            .Where(f => f.Devices[0] == "K2")
            .Select(f => f.Severity)
            .Should()
            .Equal(severity is { } s ? [s] : []);
    }

    /// <summary>What a coil for alternating voltage takes says nothing of direct voltage: then all is possible.</summary>
    [Fact]
    public void A_coil_of_the_other_sort_of_voltage_is_not_known()
    {
        var panel = Battery.Replace("K2 and K3 coil 24 V DC, burden 1 VA", "K2 coil 24 V, burden 1 VA");

        var finding = Sneak(
            "K2",
            panel,
            "1 -> S1 -> node 10 -> P1 -> node 11 -> coil K2 -> 2",
            "1 -> S2 -> 11"
        );

        Told(finding).Should().Contain("the solver finds 0 to 24 V across coil K2 (0 to 100 % of 24 V)");
    }

    [Theory]
    [InlineData("2 -> R1 -> 10", false)]
    [InlineData("10 -> R1 -> 2", true)]
    public void A_freewheel_diode_the_wrong_way_round_is_a_short(string diode, bool isShort)
    {
        var report = Check(Battery, "1 -> S1 -> node 10 -> coil K1 -> 2", diode);

        report.Findings.Any(f => f.Name == "phase-to-phase-short").Should().Be(isShort);
        report.Findings.Any(f => f.Name == "coil-never-pulls" && f.Devices[0] == "K1").Should().Be(isShort);
    }

    private static Finding Sneak(string device, string panel, params string[] rungs) =>
        Sneaks(panel, rungs).Should().ContainSingle(f => f.Devices[0] == device).Subject;

    private static IEnumerable<Finding> Sneaks(string panel, params string[] rungs) =>
        Check(panel, rungs).Findings.Where(f => f.Name == "sneak-path");

    private static CheckReport Check(string panel, params string[] rungs)
    {
        var text = panel + string.Concat(rungs.Select(r => r + "\n"));
        var report = Workbench.Check(new SourceText("sneak.panel", text), CancellationToken.None);
        report.Readable.Should().BeTrue(string.Join('\n', report.Findings.Select(f => f.Message)));
        return report;
    }

    private static IEnumerable<string> Told(Finding finding) => finding.Story.Select(s => s.Text);

    /// <summary>The path without its amperes and volts.</summary>
    private static IEnumerable<string> Along(Finding finding) => finding.Path.Select(p => p.Split(" (")[0]);
}
