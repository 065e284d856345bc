using System.Text.RegularExpressions;
using FluentAssertions;

namespace Coldpath.Tests.Cli;

/// <summary>What the README shows is what the program prints.</summary>
public partial class ReadmeTests
{
    private static string Readme => Path.Combine(RepositoryRoot.Path, "README.md");

    [Fact]
    public void Every_output_in_it_is_real()
    {
        var text = File.ReadAllText(Readme);
        var real = Shown().Replace(text, shown => $"```text\n{Expected.Account(shown.Groups[1].Value)}```");
        if (Expected.IsWriting)
            File.WriteAllText(Readme, real);
        Shown().Count(text).Should().BeGreaterThan(1);
        File.ReadAllText(Readme).Should().Be(real);
    }

    /// <summary>A block that begins with a command line.</summary>
    [GeneratedRegex(@"```text\n\$ coldpath ([^\n]*)\n.*?```", RegexOptions.Singleline)]
    private static partial Regex Shown();
}
