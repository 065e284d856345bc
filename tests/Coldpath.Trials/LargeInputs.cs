using System.Diagnostics;
using System.Text;
using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;

namespace Coldpath.Trials;

/// <summary>
/// Reads and binds inputs of up to 1 MB of the worst sorts known; each must take at most 2 s of processor and 256 MB.
/// </summary>
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

    private const int Links = 3000;

    private const string Supply = """
        panel "large"
          rules  NEC
          system 480 V 3-phase 60 Hz, solidly earthed wye
        supply MAINS 480Y/277 V, available 18 kA
        MAINS[L1] -> rail 1
        MAINS[L2] -> rail 2

        """;

    /// <summary>Text by number: a head, then lines until the size is reached or there are enough of them.</summary>
    private static readonly (string Name, string Head, int Lines, Func<int, string> Line)[] Numbered =
    [
        ("contacts", Supply + "relay K0 coil 120 V\n", 35_000, i => $"1 -> NO K0 -> 2\n"),
        (
            "numbered contacts",
            Supply + "relay K0 coil 120 V\n",
            35_000,
            i => $"1 -> K0:{i + 1}3-{i + 1}4 -> 2\n"
        ),
        ("misspelt tags", Supply + Tags(5000), 30_000, i => $"wire {i}: KX{i}:1\n"),
        ("tags of one letter", Supply + Tags(20_000), 30_000, i => $"wire {i}: K{i}x:1\n"),
        ("misspelt kinds", "", 30_000, i => $"fuze F{i} 2 A\n"),
        ("misspelt ratings", "", 30_000, i => $"fuse F{i} 2 A, clas J\n"),
        ("cascade", Supply + Fuses(15_000), 15_000 / Links, i => Cascade(i * Links)),
        ("cascade by lines", Supply + Fuses(15_000), 15_000, i => $"{Before(i)} -> F{i}\n"),
        ("cascade upwards", Supply + Fuses(15_000), 15_000, i => $"{Before(14_999 - i)} -> F{14_999 - i}\n"),
        ("relays", Supply, 15_000, i => $"relay K{i} coil 120 V\n1 -> NO K{i} -> coil K{i} -> 2\n"),
        (
            "intents",
            Supply + "relay K1 coil 120 V\nrelay K2 coil 120 V\n",
            30_000,
            _ => "never K1 in and K2 in\n"
        ),
    ];

    /// <returns>The exit code: 0 when all stay within the limits.</returns>
    public static int Run()
    {
        var failures = 0;
        foreach (var (name, head, repeated) in Sorts)
            failures += Try(name, Text(head, Size, _ => repeated)) ? 0 : 1;
        foreach (var (name, head, lines, line) in Numbered)
            failures += Try(name, Text(head, lines, line)) ? 0 : 1;
        Console.WriteLine(
            $"{Sorts.Length + Numbered.Length} sorts of 1 MB: {failures} beyond {MostSeconds} s or {MostBytes >> 20} MB"
        );
        return failures == 0 ? 0 : 1;
    }

    private static string Tags(int count) =>
        string.Concat(Enumerable.Range(0, count).Select(i => $"relay K{i} coil 24 V\n"));

    private static string Fuses(int count) =>
        string.Concat(Enumerable.Range(0, count).Select(i => $"fuse F{i} 2 A\n"));

    /// <summary>As many fuses, one after another, as a line may have.</summary>
    private static string Cascade(int first) =>
        string.Concat(Enumerable.Range(first, Links).Select(i => $" -> F{i}").Prepend(Before(first))) + "\n";

    private static string Before(int fuse) => fuse == 0 ? "MAINS[L1]" : $"F{fuse - 1}";

    private static bool Try(string name, string text)
    {
        using var peak = new PeakMemory();
        var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var result = PanelParser.Parse(new SourceText(name, text));
        var bound = PanelBinder.Bind(result, KindLibrary.Standard);
        process.Refresh();
        var seconds = (process.TotalProcessorTime - before).TotalSeconds;
        var bytes = peak.Stop();
        Console.WriteLine(
            $"{name, -18} {seconds, 6:F2} s {bytes >> 20, 5} MB {result.Panel.Statements.Count, 8} statements {bound.Findings.Count, 5} findings{(bound.Netlist is null ? "" : ", a netlist")}"
        );
        return seconds <= MostSeconds && bytes <= MostBytes;
    }

    private static string Text(string head, int lines, Func<int, string> line)
    {
        var text = new StringBuilder(head);
        for (var i = 0; i < lines && text.Length < Size; i++)
            text.Append(line(i));
        return text.ToString();
    }
}
