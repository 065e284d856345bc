using CsCheck;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings.Control;

public class LadderTests
{
    public static TheoryData<string, double, double> Drawn()
    {
        var data = new TheoryData<string, double, double>();
        foreach (var sample in Samples.Panels)
        {
            data.Add(sample.Name, double.PositiveInfinity, double.PositiveInfinity);
            data.Add(sample.Name, 277, 170);
            data.Add(sample.Name, 180, 240);
        }
        return data;
    }

    [Theory]
    [MemberData(nameof(Drawn))]
    public void Every_sample_is_drawn_without_fault(string name, double width, double height) =>
        DrawnLadder
            .Of(Samples.Panels.Single(s => s.Name == name).Text, width, height)
            .Faults()
            .Should()
            .BeEmpty();

    [Theory]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity)]
    [InlineData(277, 170)]
    [InlineData(180, 240)]
    public void Every_random_ladder_is_drawn_without_fault(double width, double height) =>
        RandomRungs.Texts.Sample(
            text => DrawnLadder.Of(text, width, height).Faults().Should().BeEmpty(),
            iter: 120
        );
}
