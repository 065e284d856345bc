using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit;

/// <summary>The comparison is worth what its panels show.</summary>
public sealed class RandomPanelsTests(ITestOutputHelper output)
{
    private const int Panels = 600;

    [Fact]
    public void Random_panels_show_all_that_matters()
    {
        var counts = Coverage.Wanted.Keys.ToDictionary(k => k, _ => 0);
        for (var number = 0; number < Panels; number++)
            foreach (
                var shown in Coverage.Shown(new Behaviour(RandomPanels.Panel(number), new DiagramTable()))
            )
                counts[shown]++;
        foreach (var (what, least) in Coverage.Wanted)
        {
            output.WriteLine($"{100.0 * counts[what] / Panels, 5:0.0} % of panels: {what}");
            ((double)counts[what] / Panels).Should().BeGreaterThanOrEqualTo(least, what);
        }
    }

    [Fact]
    public void A_panel_is_the_same_each_time() =>
        NetlistJson.ToText(RandomPanels.Panel(7)).Should().Be(NetlistJson.ToText(RandomPanels.Panel(7)));
}
