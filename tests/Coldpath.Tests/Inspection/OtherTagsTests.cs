using System.Text.RegularExpressions;
using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Inspection;

/// <summary>What devices are called decides nothing: findings, stories and cut sets are the same under other tags.</summary>
public partial class OtherTagsTests
{
    /// <summary>Characters; a larger panel takes too long.</summary>
    private const int MostText = 2000;

    private static readonly Sample[] Faulty =
    [
        .. Samples.Panels.Where(p =>
            p.Name.StartsWith("panels/faulty", StringComparison.Ordinal) && p.Text.Length <= MostText
        ),
    ];

    /// <summary>Tags with a letter before them sort as ever; numbered from behind they sort the other way.</summary>
    public static TheoryData<string> Kept => [.. Named(Faulty.Where((_, i) => i % 2 == 0))];

    public static TheoryData<string> Reversed => [.. Named(Faulty.Where((_, i) => i % 2 == 1))];

    [Theory]
    [MemberData(nameof(Kept))]
    public void Findings_are_the_same_under_tags_of_the_same_order(string file) =>
        Same(file, (tag, _) => $"A{tag}", Checked);

    [Theory]
    [MemberData(nameof(Reversed))]
    public void Findings_are_the_same_under_tags_of_another_order(string file) =>
        Same(file, (_, index) => $"Z{999 - index}", Checked);

    [Theory]
    [InlineData("panels/faulty/race.panel")]
    [InlineData("panels/workshop-compressor-1-phase.panel")]
    public void Cut_sets_are_the_same_under_tags_of_another_order(string file) =>
        Same(file, (_, index) => $"Z{999 - index}", CutSets);

    private static IEnumerable<string> Named(IEnumerable<Sample> panels) => panels.Select(p => p.Name);

    private static void Same(
        string file,
        Func<string, int, string> rename,
        Func<string, Func<string, string>, IEnumerable<string>> answers
    )
    {
        var text = Samples.Panels.Single(p => p.Name == file).Text;
        var tags = Tags(text).Index().ToDictionary(t => t.Item, t => rename(t.Item, t.Index));
        tags.Should().NotBeEmpty();
        var renamed = Written(text, tags);
        renamed.Should().NotBe(text);
        var back = tags.ToDictionary(t => t.Value, t => t.Key);
        answers(renamed, name => Written(name, back)).Should().BeEquivalentTo(answers(text, name => name));
    }

    private static IEnumerable<string> Tags(string text) =>
        PanelBinder
            .Bind(PanelParser.Parse(new SourceText("named.panel", text)), KindLibrary.Standard)
            .Netlist?.Devices.Select(d => d.Tag)
            .Where(tag => tag.All(char.IsAsciiLetterOrDigit))
            .Distinct()
        ?? [];

    /// <summary>The text with each tag, where it stands for its device, in its other form.</summary>
    private static string Written(string text, Dictionary<string, string> tags) =>
        Regex.Replace(text, @"(?<![\w:.-])\w+(?!\w)", m => tags.GetValueOrDefault(m.Value, m.Value));

    private static IEnumerable<string> Checked(string text, Func<string, string> back) =>
        Workbench
            .Check(new SourceText("named.panel", text), CancellationToken.None, failures: 0)
            .Findings.Select(f =>
                $"{f.Name} {f.Severity} of {Sorted(f.Devices.Select(back))} in {f.Story.Count} steps"
            );

    private static IEnumerable<string> CutSets(string text, Func<string, string> back)
    {
        var never = NeverLine().Match(text).Groups["what"].Value;
        var source = new SourceText("named.panel", text);
        var answer = Workbench.Failures(source, never, 2, CancellationToken.None).Answer!;
        answer.Failures.Should().NotBeEmpty();
        return answer
            .Sets.Select(s => $"{Sorted(s.Failures.Select(back))} in {s.Story.Count} steps")
            .Append($"{answer.Count} in all")
            .Concat(answer.Failures.Select(f => $"{back(f.Variable)} {f.Disclosure}"));
    }

    private static string Sorted(IEnumerable<string> names) =>
        string.Join(' ', names.Order(StringComparer.Ordinal));

    [GeneratedRegex(@"^never\s+(?<what>[^,\n]+)", RegexOptions.Multiline)]
    private static partial Regex NeverLine();
}
