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
        var report = Check(name, Catalogue.Find(name)!.Card.Example.GoodPanel);
        report.Readable.Should().BeTrue(Told(report, name));
        Told(report, name).Should().BeEmpty();
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_bad_example_gives_exactly_the_finding(string name)
    {
        var report = Check(name, Catalogue.Find(name)!.Card.Example.BadPanel);
        report.Readable.Should().BeTrue(Told(report, name));
        Open(report, name).Select(f => f.Name).Distinct().Should().Equal([name], Told(report, name));
        Open(report, name).Should().OnlyContain(f => f.Devices.Count > 0 || f.Points.Count > 0);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_card_says_all_it_must(string name)
    {
        var card = Catalogue.Find(name)!.Card;
        card.Name.Should().MatchRegex("^[a-z]+(-[a-z]+)*$");
        card.Code.Should().MatchRegex("^[EPILDNF][1-7][0-9]{2}$");
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

    /// <summary>Failures are reckoned with where the check is about them.</summary>
    private static CheckReport Check(string name, string panel) =>
        Workbench.Check(
            new SourceText("example.panel", panel),
            CancellationToken.None,
            Catalogue.Find(name)!.Card.Family == Family.Failures ? 1 : 0
        );

    /// <summary>
    /// Findings that are not waived. Nearly every panel has notes on what a stuck part does; the card of another check
    /// is not about them.
    /// </summary>
    private static IEnumerable<Finding> Open(CheckReport report, string name) =>
        report.Findings.Where(f =>
            f.Waived is null && (f.Name == name || f.Severity != Severity.Note || !f.Code.StartsWith('F'))
        );

    private static string Told(CheckReport report, string name) =>
        string.Join(
            '\n',
            Open(report, name)
                .Select(f => $"{f.Name}: {f.Message} [{string.Join(" / ", f.Story.Select(s => s.Text))}]")
        );
}
