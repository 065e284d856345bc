using Coldpath.Sheets.Drawings;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings;

/// <summary>A reversing star-delta starter: its nets have no names of their own, and its star point is a bridge.</summary>
public class ReferenceTests
{
    private const string StarDelta = """
        panel "Crusher feed"
          rules  IEC
          system 400 V 3-phase 50 Hz, TN-S

        supply                MAINS     400Y/230 V
        fused disconnect      Q1        160 A, lockable, visible break, in "incoming"
        contactor             K1 and K2 80 A AC-3, coil 230 V, mirror contacts, in "starter"
        contactor             K3 and K4 65 A AC-3, coil 230 V, mirror contacts, in "starter"
        mechanical interlock  MI1       between K1 and K2
        overload relay        F2        class 10, range 40 A to 65 A, set 50 A, in "starter"
        motor                 M1        six-lead 45 kW 400 V, 82 A
        fuse                  F10       4 A
        push button           S0        stop
        push button           S1 and S2

        MAINS[L1, L2, L3] -> Q1 -> ( K1 | K2[L3, L2, L1] ) -> F2 -> M1[U1, V1, W1]
        F2 -> K3 -> M1[W2, U2, V2]
        M1[W2, U2, V2] -> K4
        K4:2/T1 -> K4:4/T2 -> K4:6/T3
        Q1[L1] -> F10 -> rail 1
        MAINS[N] -> rail N1

        rung 1 1  -> S0 -> F2:95-96 -> node 10
        rung 2 10 -> ( S1 | NO K1 ) -> NC K2 -> ( coil K1 | coil K3 ) -> N1
        rung 3 10 -> ( S2 | NO K2 ) -> NC K1 -> ( coil K2 | coil K4 ) -> N1
        """;

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void A_net_cut_between_sheets_is_called_alike_at_both_ends(int lines)
    {
        var drawing = Drawn.Of(StarDelta, lines, "a4").Drawing;
        var power = drawing.Sheets.Where(s => s.Name == "power").ToList();
        var ends = power
            .SelectMany(s => s.Figures.Where(f => f.Kind == FigureKind.Reference).Select(f => (Sheet: s, f)))
            .SelectMany(e => Letters(e.f).Select(text => (e.Sheet.Number, Text: text)))
            .Where(e => Leads(e.Text))
            .ToList();
        ends.Should().NotBeEmpty();
        ends.Should().OnlyContain(e => NameIn(e.Text).Length > 0);
        foreach (var end in ends.Where(e => power.Exists(s => PlaceIn(e.Text) == $"sheet {s.Number}")))
            ends.Where(e => e.Number != end.Number && NameIn(e.Text) == NameIn(end.Text))
                .Should()
                .NotBeEmpty($"'{end.Text}' on sheet {end.Number} has another end");
    }

    [Fact]
    public void The_three_lines_to_a_cut_off_contactor_are_told_apart() =>
        Drawn
            .Of(StarDelta, 3, "a4")
            .Drawing.Sheets.Where(s => s.Name == "power")
            .Select(s => s.Figures.SelectMany(Letters).Where(Leads).ToList())
            .Should()
            .OnlyContain(texts => texts.Count == texts.Distinct().Count());

    [Fact]
    public void A_star_point_is_said_where_its_three_poles_are_one_line()
    {
        var drawn = Drawn.Of(StarDelta, 1, "unbounded");
        drawn.Faults(oneLine: true).Should().BeEmpty();
        drawn.Figures.Where(f => Letters(f).Contains("joined") && f.Device == "K4").Should().ContainSingle();
        Drawn
            .Of(StarDelta, 3, "unbounded")
            .Figures.Should()
            .NotContain(f => f.Device == "K4" && Letters(f).Contains("joined"));
    }

    [Fact]
    public void A_legend_explains_only_what_its_sheet_shows()
    {
        var sheets = Drawn.Of(StarDelta, 3, "a4").Drawing.Sheets;
        Legend(sheets.First(s => s.Name == "power"))
            .Should()
            .Contain(["legend: mechanical interlock", "legend: goes on where it says"]);
        foreach (var sheet in sheets.Where(s => s.Name == "control"))
            Legend(sheet)
                .Should()
                .NotContain(["legend: mechanical interlock", "legend: goes on where it says"]);
    }

    /// <summary>Letters beside a wire are read from below: the arrow must not point back into the symbol.</summary>
    [Fact]
    public void An_arrow_points_away_from_its_symbol()
    {
        var arrows =
            from sheet in Drawn.Of(StarDelta, 3, "a4").Drawing.Sheets
            where sheet.Name == "power"
            from reference in sheet.Figures
            where reference.Kind == FigureKind.Reference
            from letters in reference.Shapes.OfType<Lettering>()
            where letters.Upwards && Leads(letters.Text)
            let symbol = sheet.Figures.First(f => f.Kind == FigureKind.Symbol && f.Device == reference.Device)
            select (
                Up: letters.Text.Contains('\u2192'),
                Above: letters.Bounds.Bottom <= symbol.Bounds.Top + 1
            );
        arrows.Select(a => a.Up).Should().Contain(true).And.Contain(false);
        arrows.Should().OnlyContain(a => a.Up == a.Above);
    }

    /// <summary>One line from supply to load crosses nothing; two ways into one motor do.</summary>
    [Fact]
    public void Only_where_wires_cross_a_crossing_is_explained()
    {
        const string straight = """
            panel "Straight"
              rules  IEC
              system 400 V 3-phase 50 Hz, TN-S

            supply     MAINS 400Y/230 V
            disconnect Q1    32 A, lockable
            motor      M1    4 kW 400 V, 8 A

            MAINS[L1, L2, L3] -> Q1 -> M1
            """;
        Drawn
            .Of(straight, 3, "a4")
            .Figures.Select(f => f.Title)
            .Should()
            .NotContain("legend: crossing, not joined");
        Legend(Drawn.Of(StarDelta, 3, "a4").Drawing.Sheets.First(s => s.Name == "power"))
            .Should()
            .Contain("legend: crossing, not joined");
    }

    private static IEnumerable<string> Legend(PlacedSheet sheet) => sheet.Figures.Select(f => f.Title);

    private static IEnumerable<string> Letters(Figure figure) =>
        figure.Shapes.OfType<Lettering>().Select(l => l.Text);

    private static bool Leads(string text) => text.Contains('\u2192') || text.Contains('\u2190');

    /// <summary>"K1:2 → sheet 2" where the wire leads up, "sheet 2 ← K1:2" where it leads down.</summary>
    private static string NameIn(string text) => Ends(text).Name;

    private static string PlaceIn(string text) => Ends(text).Place;

    private static (string Name, string Place) Ends(string text) =>
        text.Split(" \u2192 ") is [var name, var place] ? (name, place)
        : text.Split(" \u2190 ") is [var to, var from] ? (from, to)
        : ("", "");
}
