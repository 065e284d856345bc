using System.Text;
using Coldpath.Cli;
using FluentAssertions;

namespace Coldpath.Tests.Cli;

/// <summary>The drawings that the README shows are those that the program makes.</summary>
public class ReadmeDrawingTests
{
    [Theory]
    [InlineData("rest", "--from rest")]
    [InlineData("run", "--set S3=pressed --set S3=released --set S1=HAND --set U1=full")]
    [InlineData("bypass", "--set S3=pressed --set S3=released --set S2=BYPASS --set S1=HAND")]
    public void Each_is_as_drawn_now(string state, string operations)
    {
        var file = $"panels/drawings/quarry-pump-bypass-{state}.svg";
        var command =
            $"draw panels/quarry-pump-bypass.panel -o - --format svg --paper unbounded {operations}";
        var ran = Ran.In(RepositoryRoot.Path, command.Split(' '));
        ran.Exit.Should().Be(Exit.Clean);
        var drawn = Encoding.UTF8.GetString(ran.Bytes);
        drawn.Should().StartWith("<svg").And.Contain("data-device=\"U1\"");
        var path = Path.Combine(RepositoryRoot.Path, file);
        if (Expected.IsWriting)
            File.WriteAllText(path, drawn);
        File.ReadAllText(path).Should().Be(drawn);
        File.ReadAllText(Path.Combine(RepositoryRoot.Path, "README.md"))
            .Should()
            .Contain(file)
            .And.Contain(operations);
    }
}
