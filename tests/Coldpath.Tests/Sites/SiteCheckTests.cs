using Coldpath.Findings;
using Coldpath.Inspection;
using Coldpath.Sheets.Reports.Text;
using Coldpath.Trials.Sites;
using FluentAssertions;

namespace Coldpath.Tests.Sites;

/// <summary>Checking a site panel by panel.</summary>
public class SiteCheckTests
{
    private static string[] Texts(int starters, int seed, bool shares) =>
        [
            .. CheckPlan
                .Of(
                    SiteGenerator.Write(starters, seed, startersInLineUp: 3),
                    CancellationToken.None,
                    0,
                    shares
                )
                .Pieces.Select(p => CheckText.Of(p.Check()).ToString()!),
        ];

    [Theory]
    [InlineData(3)]
    [InlineData(11)]
    public void Searching_parts_alike_once_changes_no_word(int seed) =>
        Texts(12, seed, shares: true).Should().Equal(Texts(12, seed, shares: false));

    [Fact]
    public void The_sample_site_is_sound_and_does_what_it_says()
    {
        var folder = Path.Combine(RepositoryRoot.Path, "panels", "gravel-works");
        var plan = CheckPlan.Of(Read(folder, "gravel-works.panel"), CancellationToken.None);
        CheckReport[] reports = [.. plan.Pieces.Select(p => p.Check())];
        reports.SelectMany(r => r.Findings).Where(f => f.Severity > Severity.Note).Should().BeEmpty();
        reports.Should().OnlyContain(r => r.Complete);
        reports.SelectMany(r => r.Proved).Should().HaveCount(4);
        reports
            .SelectMany(r => r.Assumed)
            .Should()
            .Contain(
                "MAINS comes from B0/UTIL: it may come and go at any time, each of its conductors by itself"
            );
    }

    private static SourceText Read(string folder, string file) =>
        new(file, File.ReadAllText(Path.Combine(folder, file)))
        {
            Beside = beside => new IncludedText(Read(folder, beside)),
        };

    [Fact]
    public void Each_panel_has_a_report_under_its_tag()
    {
        var plan = CheckPlan.Of(SiteGenerator.Write(3, 1), CancellationToken.None, failures: 0);
        plan.Pieces.Select(p => p.Name).Should().Equal("L1", "P1", "P2", "P3", "R");
        CheckReport[] reports = [.. plan.Pieces.Select(p => p.Check())];
        reports.Should().OnlyContain(r => r.Readable && r.Complete);
        reports[1].Panel.Should().StartWith("P1, ");
    }
}
