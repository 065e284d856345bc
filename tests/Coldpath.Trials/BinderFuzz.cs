using System.Diagnostics;
using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Wiring;

namespace Coldpath.Trials;

/// <summary>
/// Feeds the binder with samples whose lines were changed for others that can be read. It may not throw nor take more than
/// 2 s of processor and 256 MB; findings must lie inside the text, and there is a netlist when none is a defect.
/// </summary>
public static class BinderFuzz
{
    private const int MostSeconds = 2;
    private const long MostBytes = 256L << 20;

    /// <returns>The exit code: 0 when no input failed.</returns>
    public static int Run(int count, int seed)
    {
        var samples = ParserFuzz.Samples("*.panel");
        var edits = new LineEdits(samples, new Random(seed));
        var tally = new Tally();
        for (var i = 0; i < count; i++)
            Try(edits.Next(), i, seed, tally);
        tally.Print(count, samples.Count);
        return tally.Failures == 0 ? 0 : 1;
    }

    private static void Try(string text, int index, int seed, Tally tally)
    {
        var clock = Stopwatch.StartNew();
        var (before, allocated) = (Environment.CpuUsage.TotalTime, GC.GetAllocatedBytesForCurrentThread());
        try
        {
            var parsed = PanelParser.Parse(new SourceText("fuzz.panel", text));
            var bound = PanelBinder.Bind(parsed, KindLibrary.Standard);
            Check(text, bound);
            tally.Count(parsed, bound);
            var seconds = (Environment.CpuUsage.TotalTime - before).TotalSeconds;
            allocated = GC.GetAllocatedBytesForCurrentThread() - allocated;
            if (seconds > MostSeconds || allocated > MostBytes)
                tally.Fail($"input {index} of seed {seed}: {seconds:F1} s, {allocated >> 20} MB", text);
        }
        catch (Exception e)
        {
            tally.Fail($"input {index} of seed {seed}: {e}", text);
        }
        tally.Time(clock.Elapsed, index);
    }

    private static void Check(string text, BoundResult bound)
    {
        foreach (var finding in bound.Findings)
            if (finding.Location.Start < 0 || finding.Location.End > text.Length)
                throw new InvalidOperationException($"{finding.Code} lies outside the text");
        if ((bound.Netlist is null) != bound.Findings.Any(f => f.Severity >= Severity.Defect))
            throw new InvalidOperationException("a netlist in spite of a defect, or none without one");
        if (bound.Netlist is { } netlist)
            NetlistJson.ToText(netlist);
    }
}
