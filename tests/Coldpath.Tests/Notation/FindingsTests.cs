using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Notation;

/// <summary>
/// What the reader says about mistakes, and where: each file of Mistakes/ has its findings drawn into it. With
/// COLDPATH_UPDATE set the files are rewritten, to be read in the difference.
/// </summary>
public class FindingsTests
{
    private static readonly string Folder = Path.Combine(
        Samples.Root,
        "tests/Coldpath.Tests/Notation/Mistakes"
    );

    public static TheoryData<string> Files =>
        new(Directory.GetFiles(Folder).Select(f => Path.GetFileName(f)!).Order());

    [Theory]
    [MemberData(nameof(Files))]
    public void Mistakes_are_named_where_they_are(string file)
    {
        var path = Path.Combine(Folder, file);
        var drawn = Carets.Draw(File.ReadAllText(path));
        if (Environment.GetEnvironmentVariable("COLDPATH_UPDATE") is not null)
            File.WriteAllText(path, drawn);
        File.ReadAllText(path).Should().Be(drawn);
    }

    [Theory]
    [InlineData("lamp P\u200B1 red", "X011")]
    [InlineData("lamp P1 \"r\u0007ed\"", "X011")]
    [InlineData("# \u202E comment", "X011")]
    [InlineData("lamp P1 red\rlamp P2 red", "X011")]
    public void Characters_that_nobody_sees_are_reported(string text, string code) =>
        Read.Codes(text).Should().Equal(code);

    [Theory]
    [InlineData("\uFEFFlamp P1 red\r\nlamp\tP2\u00A0red\r\n")]
    [InlineData("\uFEFF# comment\r\n\r\nlamp P1 red")]
    [InlineData("")]
    [InlineData("\n\n# only a comment")]
    public void Marks_tabs_and_line_ends_of_other_systems_are_fine(string text) =>
        Read.Codes(text).Should().BeEmpty();

    [Fact]
    public void A_line_gives_one_finding_and_the_next_is_read_as_if_it_were_not_there()
    {
        var panel = Read.Panel("rung 1 ( ( 1 -> -> ) | -> 2\nfuse F1 2 A\nfuse F2 2 A\n");
        panel
            .Statements.Select(s => s.GetType().Name)
            .Should()
            .Equal("BrokenSyntax", "DeclarationSyntax", "DeclarationSyntax");
        panel.BrokenWords.Should().BeEquivalentTo("rung", "1", "2");
    }
}
