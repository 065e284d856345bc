using System.Diagnostics;
using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;

namespace Coldpath.Trials;

/// <summary>
/// Feeds the reader with damaged and random texts: half of them samples with tokens changed, a quarter with characters
/// changed, a quarter random. Neither reader nor binder may throw, findings must lie inside the text and formatting must
/// keep it.
/// </summary>
public static class ParserFuzz
{
    /// <returns>The exit code: 0 when no input failed.</returns>
    public static int Run(int count, int seed)
    {
        var samples = Samples();
        var damage = new Damage(samples, new Random(seed));
        var tally = new Tally();
        for (var i = 0; i < count; i++)
            Try(damage.Next(i), i, seed, tally);
        tally.Print(count, samples.Count);
        return tally.Failures == 0 ? 0 : 1;
    }

    private static void Try(string text, int index, int seed, Tally tally)
    {
        var clock = Stopwatch.StartNew();
        try
        {
            var source = new SourceText("fuzz.panel", text);
            var result = PanelParser.Parse(source);
            Check(source, result);
            tally.Count(result, PanelBinder.Bind(result, KindLibrary.Standard));
        }
        catch (Exception e)
        {
            tally.Fail($"input {index} of seed {seed}: {e.GetType().Name}: {e.Message}", text);
        }
        tally.Time(clock.Elapsed, index);
    }

    private static void Check(SourceText source, ParseResult result)
    {
        foreach (var finding in result.Findings)
            if (finding.Location.Start < 0 || finding.Location.End > source.Text.Length)
                throw new InvalidOperationException($"{finding.Code} lies outside the text");
        var formatted = PanelFormatter.Format(result.Panel, source);
        if (result.Findings.Count > 0)
            return;
        var again = new SourceText("formatted.panel", formatted);
        var second = PanelParser.Parse(again);
        if (second.Findings.Count > 0 || PanelFormatter.Format(second.Panel, again) != formatted)
            throw new InvalidOperationException("formatting is not idempotent");
    }

    /// <summary>The panels, the kinds and the examples of the language page.</summary>
    private static List<string> Samples() =>
        [.. Samples("*.panel"), .. Samples("*.kinds"), .. Samples("README.md")];

    /// <summary>The files that belong to samples, by their name.</summary>
    internal static List<string> Samples(string pattern)
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(root!.FullName, "Coldpath.slnx")))
            root = root.Parent;
        string[] folders = ["panels", "grammar", "src/Coldpath", "tests/Coldpath.Tests/Notation"];
        return folders
            .Select(f => Path.Combine(root.FullName, f))
            .Where(Directory.Exists)
            .SelectMany(f => Directory.EnumerateFiles(f, pattern, SearchOption.AllDirectories))
            .Where(f => Path.GetExtension(f) is not ".md" || f.Contains("grammar"))
            .Order(StringComparer.Ordinal)
            .Select(File.ReadAllText)
            .ToList();
    }
}
