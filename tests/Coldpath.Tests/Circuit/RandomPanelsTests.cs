using Coldpath.Wiring;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit;

public sealed class RandomPanelsTests
{
    [Fact]
    public void A_panel_is_the_same_each_time() =>
        NetlistJson.ToText(RandomPanels.Panel(7)).Should().Be(NetlistJson.ToText(RandomPanels.Panel(7)));

    [Fact]
    public void No_panel_has_more_assignments_than_asked_for()
    {
        foreach (var most in new[] { 16, 256, 4096 })
            for (var number = 0; number < 100; number++)
                RandomPanels
                    .Panel(number, most)
                    .Variables.Aggregate(1L, (product, v) => product * v.Values.Count)
                    .Should()
                    .BeLessThanOrEqualTo(most);
    }
}
