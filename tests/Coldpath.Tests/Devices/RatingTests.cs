using Coldpath.Devices;
using Coldpath.Findings;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices;

public class RatingTests
{
    [Fact]
    public void ReadsNamesUnitsChoicesFlagsAndShortForms()
    {
        var device = Declared.Device(
            "contactor K1 two-pole 140 A AC-3, 75 hp, coil 24 V DC, mirror contacts"
        );

        device
            .Ratings.Should()
            .BeEquivalentTo(
                [
                    new Rating("current", "140 A", 140, null, "A"),
                    new Rating("category", "AC-3", Words: ["AC-3"]),
                    new Rating("power", "75 hp", 75 * 746, null, "W"),
                    new Rating("coil", "24 V DC", 24, null, "V DC"),
                    new Rating("poles", "2", 2),
                    new Rating("mirror contacts", "yes"),
                ],
                o => o.WithStrictOrdering()
            );
    }

    [Theory]
    [InlineData("motor M1 55 kW", "power", 55_000, "W")]
    [InlineData("motor M1 75 hp", "power", 55_950, "W")]
    [InlineData("fuse F1 2 A, interrupting 200 kA", "interrupting", 200_000, "A")]
    [InlineData("on-delay timer K4 2 min", "delay", 120, "s")]
    [InlineData("capacitor C1 25 uF", "capacitance", 25e-6, "F")]
    [InlineData("capacitor C1 12 kvar", "power", 12_000, "var")]
    public void ConvertsToBaseUnits(string line, string name, double value, string unit)
    {
        var rating = Declared.Device(line).Ratings.Single(r => r.Name == name);

        rating.Value.Should().BeApproximately(value, value * 1e-9);
        rating.Unit.Should().Be(unit);
    }

    [Fact]
    public void ReadsPairsDualVoltagesPositionsAndTags()
    {
        Declared
            .Device("control transformer T1 480 V to 120 V")
            .Ratings.Single(r => r.Name == "voltage")
            .Second.Should()
            .Be(120);
        Declared
            .Device("supply MAINS 480Y/277 V")
            .Ratings.Single(r => r.Name == "voltage")
            .Second.Should()
            .Be(277);
        Declared
            .Device("overload relay F3 range 90 A to 150 A")
            .Ratings.Single(r => r.Name == "range")
            .Text.Should()
            .Be("90 A to 150 A");
        Declared
            .Device("selector S1 0 | 1 | 2")
            .Ratings.Single(r => r.Name == "positions")
            .Words.Should()
            .Equal("0", "1", "2");
        Declared
            .Device("mechanical interlock MI1 between K1 and K2")
            .Links.Single()
            .Devices.Should()
            .Equal("K1", "K2");
    }

    [Theory]
    [InlineData("level contact B1 closes on high water", "on high water")]
    [InlineData("level contact B1 closes on \"high water\"", "on high water")]
    [InlineData("level contact B1 closes \"high\"", "high")]
    public void ReadsWordsUpToTheComma(string line, string text) =>
        Declared.Device(line).Ratings.Single(r => r.Name == "closes").Text.Should().Be(text);

    [Fact]
    public void LeavesCommonRatingsToThePanel()
    {
        var made = Declared.Instance(
            "contactor K1 140 A, in \"starter\", standby, seen, from the drawing, coil 120 V"
        );

        made.Findings.Should().BeEmpty();
        made.Blueprint!.Ratings.Select(r => r.Name).Should().Equal("current", "coil", "poles");
    }

    [Theory]
    [InlineData("contactor K1 140 A AC3", "D001", "a contactor takes no 'AC3'", "did you mean 'AC-3'?")]
    [InlineData(
        "contactor K1 mirror contact",
        "D001",
        "a contactor takes no 'mirror contact'",
        "did you mean 'mirror contacts'?"
    )]
    [InlineData("emergency stop S0 red", "D001", "an emergency stop takes no 'red'", "it takes no ratings")]
    [InlineData("contactor K1 140 A, 150 A", "D002", "current of K1 is given twice", "leave one of the two")]
    [InlineData(
        "contactor K1 coil 120 A",
        "D003",
        "coil of K1 is a quantity in V, not '120 A'",
        "write for example 'coil 1 V'"
    )]
    [InlineData(
        "contactor K1 coil",
        "D003",
        "coil of K1 has no value: it is a quantity in V",
        "write for example 'coil 1 V'"
    )]
    [InlineData("contactor K1 120 V", "D004", "'120 V' of K1 needs its name in front", "write 'coil 120 V'")]
    [InlineData(
        "control transformer T1",
        "D005",
        "T1 needs voltage: two quantities, in V to V",
        "write for example '1 V to 2 V'"
    )]
    [InlineData(
        "selector S1",
        "D005",
        "S1 needs positions: a list of positions",
        "write for example 'HAND | OFF | AUTO'"
    )]
    [InlineData("contactor K1 six-pole", "D006", "poles of K1 is 6, and a contactor has 1 to 4", null)]
    [InlineData(
        "motor M1 leads 4",
        "D003",
        "leads of M1 is one of 3, 6, 9, 12, not '4'",
        "write for example 'leads 3'"
    )]
    public void SaysWhatIsWrong(string line, string code, string message, string? remedy)
    {
        var finding = Declared.Instance(line).Findings.Should().ContainSingle().Subject;

        finding.Code.Should().Be(code);
        finding.Message.Should().Be(message);
        finding.Remedy.Should().Be(remedy);
        finding.Devices.Should().NotBeEmpty();
        finding.Severity.Should().Be(Severity.Defect);
    }

    [Fact]
    public void AWrongRatingStillGivesADevice()
    {
        Declared.Instance("contactor K1 coil 120 A").Blueprint.Should().NotBeNull();
        Declared.Instance("control transformer T1").Blueprint.Should().BeNull();
    }

    [Fact]
    public void WordsInARowThatNothingTakesAreOneMistake()
    {
        var made = Declared.Instance("relay K1 painted light blue, coil 120 V");

        made.Findings.Should().ContainSingle().Which.Location.Text.Should().Be("painted light blue");
    }

    [Fact]
    public void MissingVoltageOfTheSystemIsSaid()
    {
        var made = Declared.Instance("supply MAINS", new PanelFacts());

        made.Blueprint.Should().BeNull();
        made.Findings.Should().Contain(f => f.Message.Contains("MAINS") || f.Remedy!.Contains("MAINS"));
    }
}
