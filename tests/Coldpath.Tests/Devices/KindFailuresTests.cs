using System.Text.RegularExpressions;
using Coldpath.Devices;
using Coldpath.Tests.Cli;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices;

/// <summary>Every kind of the library is in a panel that is tried, and its failures are known to a reviewer.</summary>
public class KindFailuresTests
{
    public static TheoryData<string> Names => [.. KindLibrary.Standard.Names];

    [Fact]
    public void AreAsExpected()
    {
        var file = Path.Combine(Expected.Folder, "kind-failures.txt");
        var account = KindFailures.Account();
        if (Expected.IsWriting)
            File.WriteAllText(file, account);
        account.Should().Be(File.ReadAllText(file));
    }

    /// <summary>In a sample panel, or in one that is played in the tests of what devices do.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void EachKindIsInAPanelThatIsTried(string name) =>
        Tried.Value.Any(text => Declares(text, name)).Should().BeTrue();

    private static readonly Lazy<string[]> Tried = new(() =>
        [
            .. Samples.Panels.Select(p => p.Text),
            .. Directory
                .GetFiles(Path.Combine(RepositoryRoot.Path, "tests/Coldpath.Tests/Devices/Behaving"), "*.cs")
                .Select(File.ReadAllText),
        ]
    );

    /// <summary>The kind's words in front of a tag, at the start of a line or of a text.</summary>
    private static bool Declares(string text, string kind) =>
        Regex.IsMatch(text, $"""(^\s*|"|\\n){kind}\s+[A-Z]""", RegexOptions.Multiline);
}
