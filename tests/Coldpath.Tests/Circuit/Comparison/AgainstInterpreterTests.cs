using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit.Comparison;

public class AgainstInterpreterTests(ITestOutputHelper output)
{
    private const int ShownFailures = 12;

    [Theory]
    [InlineData(0, 1800, 256)]
    [InlineData(100_000, 200, 16_384)]
    public void Engine_and_interpreter_agree_on_random_panels(int first, int count, int mostAssignments)
    {
        using var interpreter = new Interpreter();
        var seen = new HashSet<string>();
        foreach (var number in Enumerable.Range(first, count))
        {
            var netlist = RandomPanels.Panel(number, mostAssignments);
            var differences = Differences(netlist);
            if (differences.Count > 0 && seen.Count < ShownFailures)
                Show(number, netlist, differences[0]);
        }
        seen.Should().BeEmpty();

        IReadOnlyList<string> Differences(Netlist netlist) =>
            Comparison.Differences(netlist, interpreter.Table(netlist));

        void Show(int number, Netlist netlist, string difference)
        {
            var item = difference.Split(' ')[0];
            bool Shows(Netlist n)
            {
                try
                {
                    return Differences(n).Any(d => d.StartsWith(item, StringComparison.Ordinal));
                }
                catch (Exception e)
                    when (e is ArgumentException or InvalidOperationException or KeyNotFoundException)
                {
                    return false;
                }
            }
            var smallest = Shrinking.Smallest(netlist, Shows);
            seen.Add($"panel {number}");
            output.WriteLine(
                $"panel {number}: {string.Join("\n  ", Differences(smallest).Take(3))}\n{NetlistJson.ToText(smallest)}"
            );
        }
    }
}
