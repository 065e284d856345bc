using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>A panel on which engine and interpreter differ, made as small as it can be.</summary>
internal static class Disagreement
{
    private const int MostItems = 5;

    public static string Told(Netlist netlist, Interpreter interpreter)
    {
        var item = Items(netlist, interpreter)[0].Split(' ')[0];
        var smallest = Shrinking.Smallest(netlist, Shows);
        string[] lines =
        [
            $"{netlist.Panel}:",
            .. Items(smallest, interpreter).Take(MostItems),
            NetlistJson.ToText(smallest),
        ];
        return string.Join("\n", lines);

        bool Shows(Netlist smaller) =>
            Items(smaller, interpreter).Any(i => i.StartsWith(item, StringComparison.Ordinal));
    }

    private static IReadOnlyList<string> Items(Netlist netlist, Interpreter interpreter)
    {
        try
        {
            return Comparison.Differences(
                new Behaviour(netlist, new DiagramTable()),
                interpreter.Table(netlist)
            );
        }
        catch (Exception broken)
            when (broken is ArgumentException or InvalidOperationException or KeyNotFoundException)
        {
            // Too much was taken away: the rest is no netlist.
            return [];
        }
    }
}
