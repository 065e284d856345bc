using Coldpath.Sheets.Drawings;
using Coldpath.Sheets.Drawings.Rendering;
using CsCheck;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings;

public class DraftingTests
{
    public static TheoryData<string, int, string> Samples()
    {
        var data = new TheoryData<string, int, string>();
        foreach (var sample in Tests.Samples.Panels)
        foreach (var lines in new[] { 1, 3 })
        foreach (var paper in Paper.All)
            data.Add(sample.Name, lines, paper.Name);
        return data;
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Every_sample_is_drawn_without_fault(string name, int lines, string paper)
    {
        var text = Tests.Samples.Panels.Single(s => s.Name == name).Text;
        Drawn.Of(text, lines, paper).Faults(lines == 1).Should().BeEmpty();
    }

    [Theory]
    [InlineData(3, "unbounded")]
    [InlineData(1, "unbounded")]
    [InlineData(3, "a4")]
    public void Every_random_panel_is_drawn_without_fault(int lines, string paper) =>
        RandomPower.Texts.Sample(
            text => Drawn.Of(text, lines, paper).Faults(lines == 1).Should().BeEmpty(),
            iter: 300
        );

    [Theory]
    [InlineData(3, "unbounded")]
    [InlineData(1, "a3")]
    [InlineData(3, "a4")]
    public void Every_random_panel_with_rungs_is_drawn_without_fault(int lines, string paper) =>
        RandomPanels.Texts.Sample(
            text => Drawn.Of(text, lines, paper).Faults(lines == 1).Should().BeEmpty(),
            iter: 100
        );

    [Theory]
    [InlineData("rung 1 1 -> 2")]
    [InlineData("rung 1 T1:X1 -> node 100")]
    public void Power_leads_on_to_a_rung_that_only_names_it(string rung)
    {
        const string power = """
            panel "Trial"
              rules   IEC
              system  400 V 3-phase 50 Hz, TN-S
            control transformer T1 400 V to 230 V, 160 VA, X2 earthed
            T1:X1 -> rail 1
            T1:X2 -> rail 2

            """;
        foreach (var paper in new[] { "unbounded", "a4" })
            Drawn.Of(power + rung, 3, paper).Faults(oneLine: false).Should().BeEmpty();
    }

    [Fact]
    public void Drawings_made_at_the_same_time_have_the_same_bytes()
    {
        foreach (
            var sample in Tests.Samples.Panels.Where(s =>
                !s.Name.Contains("faulty", StringComparison.Ordinal)
            )
        )
        {
            var drawings = new string[4];
            Parallel.For(0, drawings.Length, i => drawings[i] = Svg(Drawn.Of(sample.Text, 3, "a3").Drawing));
            drawings.Should().AllBe(drawings[0]);
        }
    }

    private static string Svg(Drawing drawing) =>
        string.Concat(drawing.Sheets.Select(s => SvgSheet.Of(drawing, s)));
}
