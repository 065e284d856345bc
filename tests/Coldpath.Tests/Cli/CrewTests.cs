using Coldpath.Cli;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Cli;

public class CrewTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(64)]
    public void Results_come_in_the_order_of_the_list(int threads)
    {
        var crew = new Crew<int, int>(
            threads,
            i =>
            {
                Thread.Sleep((40 - i) % 5);
                return i * i;
            }
        );
        int[] items = [.. Enumerable.Range(0, 40)];
        crew.Do(items).Should().Equal(items.Select(i => i * i));
    }

    [Fact]
    public async Task Two_threads_work_at_once()
    {
        // Each piece of work waits for the other: one thread alone would never get past the first.
        using var both = new Barrier(2);
        var crew = new Crew<int, bool>(2, _ => both.SignalAndWait(TimeSpan.FromSeconds(30)));
        var met = await Task.Run(() => crew.Do([0, 1]).ToArray());
        met.Should().Equal(true, true);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void What_work_throws_comes_where_its_result_is_due(int threads)
    {
        var seen = new List<int>();
        var crew = new Crew<int, int>(threads, i => i == 4 ? throw new UnreadableException("no 4") : i);
        var all = () =>
        {
            foreach (var result in crew.Do([0, 1, 2, 3, 4, 5]))
                seen.Add(result);
        };
        all.Should().Throw<UnreadableException>().WithMessage("no 4");
        seen.Should().Equal(0, 1, 2, 3);
    }
}
