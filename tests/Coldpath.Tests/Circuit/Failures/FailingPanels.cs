using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Tests.Circuit.Failures;

/// <summary>Random panels in which a few parts, chosen at random, may fail.</summary>
internal static class FailingPanels
{
    public static Netlist Panel(int number, int mostFailing, int mostAssignments = 256)
    {
        var netlist = RandomPanels.Panel(number, mostAssignments);
        var dice = new System.Random(number);
        var chosen = netlist.AllFailures().OrderBy(_ => dice.Next()).Take(mostFailing);
        return netlist.WithFailures(chosen.ToHashSet());
    }
}
