using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>Random panels with a battery and a handful of diodes put between any of their nets.</summary>
public class DiodesAgainstInterpreterTests(ITestOutputHelper output)
{
    private const int Panels = 300;

    [Fact]
    public void Engine_and_interpreter_agree_on_panels_with_diodes()
    {
        using var interpreter = new Interpreter();
        var wrong = new List<int>();
        int passing = 0,
            shorted = 0;
        for (var number = 0; number < Panels; number++)
        {
            var netlist = WithDiodes(RandomPanels.Panel(200_000 + number, 256), new Random(number));
            var panel = new Behaviour(netlist, new DiagramTable());
            passing += Lets(panel, netlist) ? 1 : 0;
            shorted += panel.Network.Short("BAT").IsFalse ? 0 : 1;
            if (Comparison.Differences(panel, interpreter.Table(netlist)).Count > 0)
            {
                wrong.Add(number);
                output.WriteLine(Disagreement.Told(netlist, interpreter));
            }
        }
        output.WriteLine(
            $"{Panels} panels, in {passing} a diode changes what is energised, in {shorted} the battery is shorted"
        );
        wrong.Should().BeEmpty();
        passing.Should().BeGreaterThan(Panels / 10);
        shorted.Should().BeGreaterThan(Panels / 20);
    }

    /// <summary>Taking the diodes out changes what the battery reaches.</summary>
    private static bool Lets(Behaviour panel, Netlist netlist)
    {
        var without = panel.Network.Without(
            netlist.Elements.Where(e => e.Type == ElementType.Diode).Select(e => e.Id)
        );
        return netlist.Nets.Any(n =>
            panel.Network.Reached(n, "BAT", Grade.Solid) != without.Reached(n, "BAT", Grade.Solid)
        );
    }

    private static Netlist WithDiodes(Netlist netlist, Random random)
    {
        string Net() => netlist.Nets[random.Next(netlist.Nets.Count)];

        var battery = new Supply
        {
            Name = "BAT",
            Group = "BAT",
            Direct = true,
            Conductors =
            [
                new("plus", Net(), 24, 0, Polarity.Plus, Expression.True),
                new("minus", Net(), 0, 0, Polarity.Minus, Expression.True),
            ],
        };
        var diodes = Enumerable
            .Range(1, 3 + random.Next(3))
            .Select(i => new Element
            {
                Id = $"R{i}",
                Device = "",
                Type = ElementType.Diode,
                A = Net(),
                B = Net(),
            });
        return netlist with
        {
            Supplies = [.. netlist.Supplies, battery],
            Elements = [.. netlist.Elements, .. diodes],
        };
    }
}
