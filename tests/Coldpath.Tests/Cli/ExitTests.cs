using Coldpath.Answers;
using Coldpath.Cli;
using Coldpath.Cli.Commands;
using Coldpath.Findings;
using Coldpath.Tests.Sheets;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Cli;

public class ExitTests
{
    [Theory]
    [InlineData(Severity.Note, Severity.Caution, Exit.Clean)]
    [InlineData(Severity.Caution, Severity.Caution, Exit.Findings)]
    [InlineData(Severity.Danger, Severity.Caution, Exit.Findings)]
    [InlineData(Severity.Defect, Severity.Danger, Exit.Clean)]
    [InlineData(Severity.Danger, Severity.Danger, Exit.Findings)]
    [InlineData(Severity.Note, Severity.Note, Exit.Findings)]
    public void Findings_at_or_above_the_asked_severity_are_1(
        Severity found,
        Severity failOn,
        Exit expected
    ) =>
        CheckCommand
            .ExitOf(Specimens.Report with { Findings = [Specimens.Short with { Severity = found }] }, failOn)
            .Should()
            .Be(expected);

    [Fact]
    public void Waived_findings_do_not_count() =>
        CheckCommand
            .ExitOf(Specimens.Report with { Findings = [Specimens.Waived] }, Severity.Note)
            .Should()
            .Be(Exit.Clean);

    [Fact]
    public void What_could_not_be_read_is_2() =>
        CheckCommand
            .ExitOf(Specimens.Report with { Readable = false, Complete = false }, Severity.Danger)
            .Should()
            .Be(Exit.Unusable);

    [Fact]
    public void What_is_not_complete_is_3_whatever_was_found()
    {
        CheckCommand.ExitOf(Specimens.Bounded, Severity.Danger).Should().Be(Exit.Unfinished);
        CheckCommand
            .ExitOf(Specimens.Bounded with { Findings = [Specimens.Short] }, Severity.Note)
            .Should()
            .Be(Exit.Unfinished);
    }

    [Fact]
    public void A_script_goes_on_only_when_a_set_isolates()
    {
        var sets = Specimens.Isolate with { Have = null };
        IsolateCommand.ExitOf(sets).Should().Be(Exit.Clean);
        IsolateCommand.ExitOf(sets with { Count = 0, Sets = [] }).Should().Be(Exit.Findings);
        IsolateCommand.ExitOf(Specimens.Isolate).Should().Be(Exit.Findings);
        var open = Specimens.Isolate.Have! with { Enough = Verdict.Open };
        IsolateCommand.ExitOf(Specimens.Isolate with { Have = open }).Should().Be(Exit.Unfinished);
        IsolateCommand.ExitOf(sets with { Complete = false }).Should().Be(Exit.Unfinished);
    }
}
