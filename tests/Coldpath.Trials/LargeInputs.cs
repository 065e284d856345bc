using System.Diagnostics;
using System.Text;
using Coldpath.Findings;
using Coldpath.Notation;

namespace Coldpath.Trials;

/// <summary>Reads inputs of 1 MB of the worst sorts known; each must take at most 2 s of processor and 256 MB.</summary>
public static class LargeInputs
{
    private const int Size = 1 << 20;
    private const int MostSeconds = 2;
    private const long MostBytes = 256L << 20;

    private static readonly (string Name, string Head, string Repeated)[] Sorts =
    [
        ("chains", "", "a->b\n"),
        ("devices", "", "a B 1 A\n"),
        ("rungs", "", "rung 1 1 -> ( S3 | NO K0 ) -> coil K0 -> 2\n"),
        ("wires", "", "wire 1: a:1, b:2\n"),
        ("conditions", "", "never a b and c d and e f\n"),
        ("mixed conditions", "", "never a b or c d and e f\n"),
        ("one condition", "never a b", " and b c"),
        ("one chain", "a", " -> b"),
        ("words", "", "a b "),
        ("one name", "", "x"),
        ("rows of a word", "", "a\n"),
        ("brackets", "", "("),
        ("rows of brackets", "", "(\n"),
        ("unpaired", "", "( a -> b\n"),
        (
            "deep",
            "",
            $"a -> {string.Concat(Enumerable.Repeat("( ", 199))}b{string.Concat(Enumerable.Repeat(" )", 199))}\n"
        ),
        ("dangling", "", "a ->\n"),
        ("other alphabets", "", "\u043B\u0430\u043C\u043F\u0430 \u04161 \u0436\n"),
        ("pictures", "", "\uD83D\uDE00"),
        ("hyphens", "", "a-b-c-d->a-b-c-d\n"),
        ("comments", "", "#\n"),
        ("quotes", "", "\"\n"),
        ("zeros", "", "\0"),
        ("kinds", "", "kind x\n"),
        ("blocks", "kind x\n", "if a\n"),
        ("sums", "kind x\n", "  let a = b + c * (d + 1 A) / root 3\n"),
        (
            "guards",
            "kind x\n",
            "  state a when energised [a - b] between 85 % of c and 110 % of c and not (b or any c closed)\n"
        ),
        ("doubt", "kind x\n", "  state a when may may pull [a - b] at x\n"),
    ];

    /// <returns>The exit code: 0 when all stay within the limits.</returns>
    public static int Run()
    {
        var failures = 0;
        foreach (var (name, head, repeated) in Sorts)
            failures += Try(name, Text(head, repeated)) ? 0 : 1;
        Console.WriteLine(
            $"{Sorts.Length} sorts of 1 MB: {failures} beyond {MostSeconds} s or {MostBytes >> 20} MB"
        );
        return failures == 0 ? 0 : 1;
    }

    private static bool Try(string name, string text)
    {
        using var peak = new PeakMemory();
        var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var result = PanelParser.Parse(new SourceText(name, text));
        process.Refresh();
        var seconds = (process.TotalProcessorTime - before).TotalSeconds;
        var bytes = peak.Stop();
        Console.WriteLine(
            $"{name, -18} {seconds, 6:F2} s {bytes >> 20, 5} MB {result.Panel.Statements.Count, 8} statements {result.Findings.Count, 5} findings"
        );
        return seconds <= MostSeconds && bytes <= MostBytes;
    }

    private static string Text(string head, string repeated)
    {
        var text = new StringBuilder(head, Size + repeated.Length);
        while (text.Length < Size)
            text.Append(repeated);
        return text.ToString();
    }
}
