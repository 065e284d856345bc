using System.Numerics;
using Coldpath.Answers;
using Coldpath.Findings;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Answers.Meshes;

/// <summary>What isolates a load in a mesh, asked of descriptions as a user writes them.</summary>
public sealed class MeshTests
{
    /// <summary>
    /// The bridge network of the reliability textbooks: its minimal cut sets are {1,2}, {4,5}, {1,3,5}, {2,3,4} (recomputed
    /// by brute force).
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_bridge_has_its_four_isolating_sets(bool threePole)
    {
        var answer = Ask(MeshNetwork.Bridge(), threePole);
        answer.Count.Should().Be((BigInteger)4);
        Tags(answer).Should().Equal("Q1 Q2", "Q4 Q5", "Q1 Q3 Q5", "Q2 Q3 Q4");
        answer.Complete.Should().BeTrue();
        answer.Cut.Should().BeFalse();
    }

    /// <summary>One switch on either way round: closed form n/2 times the rest.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(100)]
    public void A_ring_is_cut_once_on_either_way(int bars) =>
        Ask(MeshNetwork.Ring(bars)).Count.Should().Be((BigInteger)(bars / 2 * (bars - bars / 2)));

    /// <summary>Every division of the bars is a cut: closed form 2 to the number of the other bars.</summary>
    [Theory]
    [InlineData(4)]
    [InlineData(8)]
    public void Where_each_two_bars_are_joined_every_division_is_a_cut(int bars) =>
        Ask(MeshNetwork.Complete(bars)).Count.Should().Be(BigInteger.One << (bars - 2));

    /// <summary>Closed form: a cut parts each rail once, or a rail's end with its rung; n squared in all.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(34)]
    public void A_ladder_has_as_many_sets_as_its_rungs_squared(int rungs)
    {
        var ladder = MeshNetwork.Ladder(rungs);
        if (rungs <= 6)
            Cuts.ByBruteForce(ladder).Should().HaveCount(rungs * rungs);
        Ask(ladder).Count.Should().Be((BigInteger)(rungs * rungs));
    }

    /// <summary>592,912 for a grid of 6 by 6 bars from corner to opposite corner, as the project's definitions say.</summary>
    [Theory]
    [InlineData(2, 4)]
    [InlineData(3, 30)]
    [InlineData(4, 348)]
    [InlineData(5, 8_742)]
    [InlineData(6, 592_912)]
    [InlineData(7, 117_163_434)]
    [InlineData(8, 67_739_968_608)]
    public void A_grid_has_as_many_sets_as_a_transfer_matrix_counts(int side, long sets)
    {
        Cuts.OfGrid(side).Should().Be(sets);
        if (side <= 4)
            Cuts.ByBruteForce(MeshNetwork.Grid(side, side)).Should().HaveCount((int)sets);
        var answer = Ask(MeshNetwork.Grid(side, side));
        answer.Count.Should().Be((BigInteger)sets);
        answer.Complete.Should().BeTrue();
        answer.Cut.Should().Be(sets > 20);
        answer.Sets.Should().HaveCount((int)Math.Min(sets, 20));
    }

    /// <summary>Fewest switches first, then in declared order, whatever the order is.</summary>
    [Theory]
    [InlineData(0, 20)]
    [InlineData(1, 50)]
    [InlineData(2, 1_000)]
    public void The_best_sets_are_those_that_brute_force_ranks_first(int seed, int most)
    {
        var mesh = MeshNetwork.Grid(4, 4).Shuffled(seed);
        var expected = Cuts.ByBruteForce(mesh)
            .OrderBy(cut => cut.Length)
            .ThenBy(cut => string.Join(' ', cut.Select(q => $"{q:00}")), StringComparer.Ordinal)
            .Take(most)
            .Select(cut => string.Join(' ', cut.Select(q => $"Q{q}")));
        Tags(Ask(mesh, most: most)).Should().Equal(expected);
    }

    [Fact]
    public void What_someone_means_to_open_in_a_large_mesh_is_judged()
    {
        var mesh = MeshNetwork.Grid(7, 7).Shuffled(1);
        var corner = mesh.Switches.Index().Where(s => s.Item.A == 0).Select(s => $"Q{s.Index + 1}").ToArray();
        Ask(mesh, have: corner).Have!.Enough.Should().Be(Verdict.Yes);
        var without = Ask(mesh, have: corner[..1]).Have!;
        without.Enough.Should().Be(Verdict.No);
        without.Stays!.Path.Should().NotBeEmpty();
    }

    private static IsolateAnswer Ask(
        MeshNetwork mesh,
        bool threePole = true,
        int most = IsolateQuestion.UsualMost,
        IReadOnlyList<string>? have = null
    ) =>
        Workbench
            .Isolate(
                new SourceText(mesh.Name, mesh.Text(threePole)),
                ["M1"],
                have,
                CancellationToken.None,
                most
            )
            .Answer!;

    private static IEnumerable<string> Tags(IsolateAnswer answer) =>
        answer.Sets.Select(set => string.Join(' ', set.Isolators.Select(i => i.Device)));
}
