using System.Text.RegularExpressions;

namespace Coldpath.Tests;

/// <summary>Panel texts of the project, for every test that runs over all of them.</summary>
public static partial class Samples
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root => RepositoryRoot.Path;

    /// <summary>Each block marked "panel" in grammar/README.md, with the heading it stands under.</summary>
    public static IReadOnlyList<Sample> LanguagePage { get; } =
        Blocks(Path.Combine(Root, "grammar", "README.md"));

    /// <summary>The panels of panels/, the faulty ones and kind files included; sites and their panels have tests of their own.</summary>
    public static IReadOnlyList<Sample> Panels { get; } =
    [.. Files(Path.Combine(Root, "panels")).Where(s => !s.Name.StartsWith("panels/gravel-works/"))];

    public static IEnumerable<Sample> All => LanguagePage.Concat(Panels);

    /// <summary>The blocks marked "panel" of a Markdown page.</summary>
    public static IReadOnlyList<Sample> Blocks(string page)
    {
        var text = File.ReadAllText(page).ReplaceLineEndings("\n");
        return PanelBlock()
            .Matches(text)
            .Select(
                (m, n) =>
                    new Sample(
                        $"{Path.GetFileName(page)} {n + 1}: {Heading(text, m.Index)}",
                        m.Groups[1].Value
                    )
            )
            .ToList();
    }

    private static List<Sample> Files(string folder) =>
        Directory.Exists(folder)
            ? Directory
                .EnumerateFiles(folder, "*.panel", SearchOption.AllDirectories)
                .Order(StringComparer.Ordinal)
                .Select(f => new Sample(Path.GetRelativePath(Root, f), File.ReadAllText(f)))
                .ToList()
            : [];

    private static string Heading(string text, int before)
    {
        var at = text.LastIndexOf("\n#", before, StringComparison.Ordinal);
        return at < 0 ? "" : text[(at + 1)..text.IndexOf('\n', at + 1)].TrimStart('#', ' ');
    }

    [GeneratedRegex(@"^```panel\n(.*?)^```$", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex PanelBlock();
}

/// <param name="Name">Where it is from.</param>
public sealed record Sample(string Name, string Text)
{
    public override string ToString() => Name;
}
