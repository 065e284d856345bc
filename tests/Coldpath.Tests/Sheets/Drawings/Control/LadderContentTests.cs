using Coldpath.Sheets.Drawings;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings.Control;

/// <summary>What an electrician reads off the ladder.</summary>
public class LadderContentTests
{
    private const string Starter = """
        panel "Test"
          rules   IEC
          system  400 V 3-phase 50 Hz, TN-S
        supply              MAINS 400/230 V
        disconnect          Q1    40 A, lockable
        contactor           K1 and K2 18 A AC-3, coil 230 V
        mechanical interlock MI1  between K1 and K2
        overload relay      F2    class 10, set 11 A
        motor               M1    5.5 kW 400 V, 11 A
        control transformer T1    400 V to 230 V, X2 earthed
        push button         S1    stop
        push button         S2    "forward"
        push button         S3    "reverse"
        selector            S4    A | B
        terminal strip      X1
        MAINS[L1, L2, L3] -> Q1 -> K1 -> F2 -> M1
        Q1 -> K2 -> F2[5/L3, 3/L2, 1/L1]
        Q1[L1, L2] -> T1[H1, H4]
        T1:X1 -> rail 1
        T1:X2 -> rail 2
        rung 1 1   -> S1 -> F2:95-96 -> node 100
        rung 2 100 -> ( S2 | NO K1 ) -> NC K2 -> coil K1 -> 2
        rung 3 100 -> ( S3 | NO K2 ) -> NC K1 -> coil K2 -> 2
        rung 4 1   -> X1:1 -> S4 at B -> X1:2
        untraced X1:2 because "gate house"

        """;

    [Fact]
    public void The_starter_has_no_fault() => DrawnLadder.Of(Starter).Faults().Should().BeEmpty();

    [Fact]
    public void A_coil_lists_its_contacts_with_their_rungs_and_marks_normally_closed_ones()
    {
        var table = DrawnLadder.Of(Starter).Figures.Single(f => f.Title == "contacts of K1");
        Texts(table)
            .Should()
            .Equal("13-14", "NO", "rung 2", "21-22", "NC", "rung 3", "main", "power, sheet 1");
        table.Shapes.OfType<Polyline>().Should().ContainSingle("the normally closed contact is underlined");
    }

    [Fact]
    public void A_contact_refers_to_the_rung_of_its_coil() =>
        TextsBeside("K2 NC, 11 to 12, rung 2").Should().Contain("rung 3");

    [Fact]
    public void A_contact_of_a_device_without_coil_refers_to_the_power_sheet() =>
        TextsBeside("F2 overload relay, 95 to 96, rung 1").Should().Contain("power, sheet 1");

    [Fact]
    public void Rails_bear_their_voltage_and_the_earthed_one_its_sign()
    {
        var figures = DrawnLadder.Of(Starter).Figures.ToList();
        Texts(figures.Single(f => f.Title.StartsWith("rail 1", StringComparison.Ordinal)))
            .Should()
            .Equal("1", "230 V AC", "T1:X1, power, sheet 1");
        figures.Should().ContainSingle(f => f.Title == "rail 2 is earthed");
    }

    [Fact]
    public void A_node_that_one_rung_gives_and_the_next_ones_take_is_one_wire()
    {
        var wires = DrawnLadder.Of(Starter).Figures.Where(f => f.Kind == FigureKind.Wire && f.Net == "100");
        wires.Should().ContainSingle().Which.Terminals.Should().Contain(["F2:96", "S2:13", "S3:13"]);
    }

    [Fact]
    public void What_was_not_traced_is_said() =>
        DrawnLadder
            .Of(Starter)
            .Figures.Where(f => f.Net == "X1:2" || f.Device == "X1")
            .SelectMany(Texts)
            .Should()
            .Contain("goes elsewhere, not");

    [Fact]
    public void Linked_coils_name_each_other() =>
        DrawnLadder
            .Of(Starter)
            .Figures.Where(f => f.Kind == FigureKind.Link)
            .Select(f => (f.Device, f.Title))
            .Should()
            .Equal(("MI1", "MI1: interlocked with K2"), ("MI1", "MI1: interlocked with K1"));

    [Fact]
    public void References_to_another_sheet_name_it()
    {
        var drawn = DrawnLadder.Of(Starter, height: 45);
        drawn.Sheets.Should().HaveCountGreaterThan(1);
        drawn.Figures.SelectMany(Texts).Should().Contain("sheet 3, rung 2").And.Contain("rung 3");
        drawn.Faults().Should().BeEmpty();
    }

    [Fact]
    public void A_long_rung_folds_and_both_ends_of_a_fold_bear_one_letter()
    {
        var contacts = string.Join(" -> ", Enumerable.Repeat("NO K1", 14));
        var drawn = DrawnLadder.Of(Starter + $"rung 5 1 -> {contacts} -> coil K1 -> 2", width: 180);
        var titles = drawn.Figures.Select(f => f.Title).ToList();
        titles.Should().Contain(["goes on at A", "goes on from A", "goes on at B", "goes on from B"]);
        drawn.Ladder.Width.Should().Be(180);
    }

    [Fact]
    public void A_state_opens_and_closes_contacts_and_a_finding_marks_devices()
    {
        var rest = DrawnLadder.Of(Starter);
        var shown = new Shown
        {
            Closed = new Dictionary<string, bool> { ["S2.13-14"] = true },
            Marked = new HashSet<string> { "K1" },
            Nets = new Dictionary<string, Tone> { ["100"] = Tone.SolidlyLive },
        };
        var pressed = DrawnLadder.Of(Starter, shown: shown);
        Symbol(pressed, "S2 push button, 13 to 14, rung 2")
            .Shapes.Should()
            .NotEqual(Symbol(rest, "S2 push button, 13 to 14, rung 2").Shapes);
        Symbol(pressed, "K1 coil, A1 to A2, rung 2").Tone.Should().Be(Tone.Marked);
        pressed
            .Figures.Single(f => f is { Kind: FigureKind.Wire, Net: "100" })
            .Tone.Should()
            .Be(Tone.SolidlyLive);
    }

    [Fact]
    public void Two_drawings_of_one_panel_are_alike() =>
        Told(DrawnLadder.Of(Starter, 180, 100)).Should().Be(Told(DrawnLadder.Of(Starter, 180, 100)));

    private static IEnumerable<string> TextsBeside(string title)
    {
        var drawn = DrawnLadder.Of(Starter);
        var box = Symbol(drawn, title).Bounds.Grown(6);
        return drawn.Figures.Where(f => f.Bounds.Overlaps(box)).SelectMany(Texts);
    }

    private static Figure Symbol(DrawnLadder drawn, string title) =>
        drawn.Figures.Single(f => f.Kind == FigureKind.Symbol && f.Title == title);

    private static IEnumerable<string> Texts(Figure figure) =>
        figure.Shapes.OfType<Lettering>().Select(l => l.Text);

    private static string Told(DrawnLadder drawn) =>
        string.Join(
            '\n',
            drawn.Figures.Select(f => $"{f.Kind} {f.Title} {f.Bounds} {string.Join('|', Texts(f))}")
        );
}
