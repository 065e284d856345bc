using System.Diagnostics;
using System.Globalization;
using System.Text;
using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Panels;
using Coldpath.Sheets.Drawings;

namespace Coldpath.Trials;

/// <summary>
/// Drawing of line-ups: starters side by side on one bus, each with its rungs. Median of the runs, warm, reading left
/// out. Aim: 2 s for a thousand devices.
/// </summary>
internal static class DrawTrial
{
    private const int Runs = 5;

    public static void Run()
    {
        Console.WriteLine($"{"devices", 8} {"paper", -10} {"sheets", 7} {"figures", 9} {"median ms", 10}");
        foreach (var starters in new[] { 12, 125, 250 })
        foreach (var paper in new[] { "unbounded", "a3" })
            Measure(LineUp(starters), Paper.Find(paper)!);
    }

    private static void Measure(string text, Paper paper)
    {
        var source = new SourceText("line-up.panel", text);
        var bound = PanelBinder.Bind(PanelParser.Parse(source), KindLibrary.Standard);
        var times = new double[Runs];
        var drawing = default(Drawing);
        for (var run = -1; run < Runs; run++)
        {
            var watch = Stopwatch.StartNew();
            drawing = Drafting.Draw(bound.Panel, bound.Netlist, new DrawRequest(3, paper), Shown.Wiring);
            times[Math.Max(run, 0)] = watch.Elapsed.TotalMilliseconds;
        }
        Array.Sort(times);
        var figures = drawing!.Sheets.Sum(s => s.Figures.Count);
        Console.WriteLine(
            $"{bound.Panel.Devices.Count, 8} {paper.Name, -10} {drawing.Sheets.Count, 7} {figures, 9:N0} {times[Runs / 2], 10:0}"
        );
    }

    private static string LineUp(int starters)
    {
        var devices = new StringBuilder();
        var wiring = new StringBuilder();
        for (var i = 1; i <= starters; i++)
        {
            devices.AppendLine(
                CultureInfo.InvariantCulture,
                $"""
                disconnect     QA{i} 63 A, lockable, in "cell {i}"
                fuse           FA{i} three-pole 40 A class aM, interrupting 100 kA, in "cell {i}"
                contactor      KA{i} 32 A AC-3, coil 230 V, in "cell {i}"
                overload relay FB{i} class 10, range 20 A to 32 A, set 25 A, in "cell {i}"
                motor          MA{i} 11 kW 400 V, 22 A
                push button    SA{i} stop
                push button    SB{i} "start"
                lamp           PA{i} green
                """
            );
            wiring.AppendLine(
                CultureInfo.InvariantCulture,
                $"""
                XD1 -> QA{i} -> FA{i} -> KA{i} -> FB{i} -> MA{i}
                rung {2 * i - 1} 1 -> SA{i} -> FB{i}:95-96 -> ( SB{i} | NO KA{i}:13-14 ) -> coil KA{i} -> 2
                rung {2 * i} 1 -> NO KA{i}:23-24 -> PA{i} -> 2
                """
            );
        }
        return $"""
            panel "Line-up"
              rules  IEC
              system 400 V 3-phase 50 Hz, TN-S

            supply             MAINS 400/230 V, available 25 kA
            disconnect         Q1    1600 A, lockable
            distribution block XD1   three-pole
            {devices}
            MAINS[L1, L2, L3] -> Q1 -> XD1
            XD1[L1] -> rail 1
            MAINS[N] -> rail 2
            {wiring}
            """;
    }
}
