using FluentAssertions;

namespace Coldpath.Tests.Cli;

/// <summary>The faulty panels and a few questions, compared with the files under Expected.</summary>
public class ExpectationTests
{
    private static readonly string[] Questions =
    [
        "check panels/quarry-pump-bypass.panel",
        "live panels/quarry-pump-bypass.panel --set S3=pressed --set S1=HAND --set S2=BYPASS",
        "why panels/quarry-pump-bypass.panel M1:U",
        "isolate panels/quarry-pump-bypass.panel U1",
        "isolate panels/quarry-pump-bypass.panel M1 --have Q1",
        "isolate panels/quarry-pump-bypass.panel M1 --have K1",
        "live panels/dairy-standby-changeover.panel",
        "why panels/mine-face-fan-it.panel M1:U",
    ];

    public static TheoryData<string> Commands => [.. Questions, .. Faulty()];

    [Theory]
    [MemberData(nameof(Commands))]
    public void A_command_prints_what_is_expected(string command)
    {
        var file = Path.Combine(Expected.Folder, Expected.FileOf(command));
        var account = Expected.Account(command);
        if (Expected.IsWriting)
            File.WriteAllText(file, account);
        File.Exists(file).Should().BeTrue($"COLDPATH_EXPECT=write bash .ci/test writes {file}");
        account.Should().Be(File.ReadAllText(file));
    }

    [Fact]
    public void No_expectation_is_left_over()
    {
        var known = Questions.Concat(Faulty()).Select(Expected.FileOf).ToHashSet();
        Directory
            .GetFiles(Expected.Folder)
            .Select(Path.GetFileName)
            .Should()
            .BeSubsetOf([.. known, "kind-failures.txt"]);
    }

    private static IEnumerable<string> Faulty() =>
        Directory
            .GetFiles(Path.Combine(RepositoryRoot.Path, "panels/faulty"), "*.panel")
            .Select(file => $"check --failures 0 panels/faulty/{Path.GetFileName(file)}")
            .Order(StringComparer.Ordinal);
}
