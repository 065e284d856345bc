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
