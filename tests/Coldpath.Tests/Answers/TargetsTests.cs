using Coldpath.Answers;
using Coldpath.Wiring;
using FluentAssertions;

namespace Coldpath.Tests.Answers;

public class TargetsTests
{
    private static readonly Netlist Panel = new()
    {
        Panel = "P",
        Earth = "PE",
        Nets = ["PE", "n1", "n2"],
        Points =
        [
            new("M1:U/U1/T1", "n1", "M1", "pump house"),
            new("M1:V/V1/T2", "n2", "M1", "pump house"),
            new("M:1", "n2", "M", null),
            new("102", "n1", null, null),
        ],
    };

    [Theory]
    [InlineData("M1:U/U1/T1", "M1:U/U1/T1")]
    [InlineData("M1:U", "M1:U/U1/T1")]
    [InlineData("M1:T2", "M1:V/V1/T2")]
    [InlineData("M1:T", "")]
    [InlineData("M1:", "")]
    [InlineData("M:1", "M:1")]
    [InlineData("102", "102")]
    [InlineData("M1", "M1:U/U1/T1 M1:V/V1/T2")]
    [InlineData("pump house", "M1:U/U1/T1 M1:V/V1/T2")]
    [InlineData("X9", "")]
    public void A_name_finds_its_points(string name, string points) =>
        string.Join(' ', Targets.Find(Panel, name).Select(p => p.Name)).Should().Be(points);
}
