using Coldpath.Findings;
using Coldpath.Inspection;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Inspection;

/// <summary>The panels that ship: the sound ones are clean, each faulty one shows the fault it is named for.</summary>
public sealed class PanelFilesTests
{
    public static TheoryData<string> Sound => [.. Files("panels")];

    public static TheoryData<string> Faulty => [.. Files("panels/faulty")];

    [Theory]
    [MemberData(nameof(Sound))]
    public void A_sound_panel_is_clean_and_does_what_it_says(string file)
    {
        var report = Check("panels", file, failures: 1);
        report.Readable.Should().BeTrue();
        report
            .Findings.Where(f => f.Waived is null && f.Severity >= Severity.Caution)
            .Select(f => $"{f.Name}: {f.Message}")
            .Should()
            .BeEmpty();
        report.Proved.Should().NotBeEmpty();
    }

    [Theory]
    [MemberData(nameof(Faulty))]
    public void A_faulty_panel_shows_its_fault_and_no_other(string file)
    {
        var report = Check("panels/faulty", file, IsAboutFailures(file) ? 1 : 0);
        report
            .Findings.Where(f => f.Waived is null)
            .Where(f => f.Severity >= Severity.Caution || f.Name == Shown(file))
            .Select(f => f.Name)
            .Distinct()
            .Should()
            .Equal(Shown(file));
    }

    /// <summary>The finding that the panel's first comment line names: "# shows chatter".</summary>
    private static string Shown(string file) =>
        File.ReadLines(Path.Combine(Folder("panels/faulty"), file)).First()["# shows ".Length..];

    private static bool IsAboutFailures(string file) =>
        Catalogue.Find(Shown(file))!.Card.Family == Family.Failures;

    private static CheckReport Check(string folder, string file, int failures)
    {
        var path = Path.Combine(Folder(folder), file);
        return Workbench.Check(
            new SourceText($"{folder}/{file}", File.ReadAllText(path)),
            CancellationToken.None,
            failures
        );
    }

    private static IEnumerable<string> Files(string folder) =>
        Directory
            .GetFiles(Folder(folder), "*.panel")
            .Select(p => Path.GetFileName(p)!)
            .Order(StringComparer.Ordinal);

    private static string Folder(string folder) => Path.Combine(RepositoryRoot.Path, folder);
}
