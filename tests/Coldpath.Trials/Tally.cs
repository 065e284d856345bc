using Coldpath.Notation;
using Coldpath.Panels;

namespace Coldpath.Trials;

/// <summary>Counts what became of fuzzed inputs.</summary>
internal sealed class Tally
{
    private const int MostPrinted = 10;
    private readonly SortedDictionary<string, int> codes = new(StringComparer.Ordinal);
    private int whole;
    private int bound;
    private long findings;
    private TimeSpan slowest;
    private int slowestAt;

    public int Failures { get; private set; }

    public void Count(ParseResult result, BoundResult panel)
    {
        whole += result.Findings.Count == 0 ? 1 : 0;
        bound += panel.Netlist is null ? 0 : 1;
        findings += result.Findings.Count;
        foreach (var code in result.Findings.Select(f => $"{f.Code} {f.Name}"))
            codes[code] = codes.GetValueOrDefault(code) + 1;
    }

    public void Fail(string what, string text)
    {
        if (Failures++ < MostPrinted)
            Console.WriteLine($"{what}\n  {text[..Math.Min(text.Length, 400)].ReplaceLineEndings("\n  ")}");
    }

    public void Time(TimeSpan elapsed, int index)
    {
        if (elapsed > slowest)
            (slowest, slowestAt) = (elapsed, index);
    }

    public void Print(int inputs, int samples)
    {
        Console.WriteLine($"{inputs:N0} inputs from {samples} samples: {Failures} failures");
        Console.WriteLine(
            $"{whole:N0} reached the binder without findings, {bound:N0} became a netlist; {findings:N0} findings of the reader:"
        );
        foreach (var (code, count) in codes)
            Console.WriteLine($"  {code, -28} {count, 9:N0}");
        Console.WriteLine($"slowest {slowest.TotalMilliseconds:F0} ms (input {slowestAt})");
    }
}
