using Coldpath.Findings;
using Coldpath.Inspection;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Inspection;

/// <summary>Every check by its own card: the good example gives nothing at all, the bad one exactly that finding.</summary>
public sealed class CardTests
{
    public static TheoryData<string> Names => [.. Catalogue.All.Select(c => c.Card.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_good_example_gives_nothing(string name)
    {
        var report = Check(Catalogue.Find(name)!.Card.Example.GoodPanel);
        report.Readable.Should().BeTrue(Told(report));
        Told(report).Should().BeEmpty();
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_bad_example_gives_exactly_the_finding(string name)
    {
        var report = Check(Catalogue.Find(name)!.Card.Example.BadPanel);
        report.Readable.Should().BeTrue(Told(report));
        Open(report).Select(f => f.Name).Distinct().Should().Equal([name], Told(report));
        Open(report).Should().OnlyContain(f => f.Devices.Count > 0 || f.Points.Count > 0);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_card_says_all_it_must(string name)
    {
        var card = Catalogue.Find(name)!.Card;
        card.Name.Should().MatchRegex("^[a-z]+(-[a-z]+)*$");
        card.Code.Should().MatchRegex("^[EPILDN][1-6][0-9]{2}$");
        foreach (var text in new[] { card.Title, card.Why, card.Reference, card.Remedy })
            text.Should().NotBeNullOrWhiteSpace();
        card.Title.Should().EndWith(".");
        card.Why.Should().EndWith(".");
        card.Remedy.Should().NotEndWith(".");
        card.Example.Bad.Should().NotBeEmpty().And.HaveSameCount(card.Example.Good);
    }

    [Fact]
    public void Codes_and_names_are_unique_and_in_order()
    {
        var codes = Catalogue.All.Select(c => c.Card.Code).ToArray();
        codes.GroupBy(c => c[0]).Should().OnlyContain(family => family.SequenceEqual(family.Order()));
        codes.Should().OnlyHaveUniqueItems();
        Catalogue.All.Select(c => c.Card.Name).Should().OnlyHaveUniqueItems();
    }

    private static CheckReport Check(string panel) =>
        Workbench.Check(new SourceText("example.panel", panel), CancellationToken.None);

    private static IEnumerable<Finding> Open(CheckReport report) =>
        report.Findings.Where(f => f.Waived is null);

    private static string Told(CheckReport report) =>
        string.Join(
            '\n',
            Open(report)
                .Select(f => $"{f.Name}: {f.Message} [{string.Join(" / ", f.Story.Select(s => s.Text))}]")
        );
}
