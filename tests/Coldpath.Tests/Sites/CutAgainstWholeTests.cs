using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Circuit.States;
using Coldpath.Devices;
using Coldpath.Notation;
using Coldpath.Panels.Sites;
using Coldpath.Sites;
using Coldpath.Trials.Sites;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;
using FluentAssertions;
using Xunit.Abstractions;

namespace Coldpath.Tests.Sites;

/// <summary>
/// A part of a site searched by itself, with stubs for the rest, against the same part within the whole site searched at
/// once: whatever its own variables and points can come to in the site they must come to in the part.
/// </summary>
public class CutAgainstWholeTests(ITestOutputHelper output)
{
    /// <summary>In the last two a contact that welds elsewhere lets a control voltage in.</summary>
    private static readonly int[] Seeds = [1, 2, 9, 15];
    private static readonly string[] Boards = ["L", "R", "D"];

    [Fact]
    public void A_part_by_itself_reaches_all_that_it_reaches_in_the_site()
    {
        var (asked, wider) = (0, new List<string>());
        foreach (var seed in Seeds)
        foreach (var (name, inSite, alone) in Answers(seed))
        {
            asked++;
            alone.Search.Example(inSite, alone.States).Should().BeEmpty($"site {seed}: {name}");
            if (inSite != alone.States)
                wider.Add($"site {seed}: {name}");
        }
        output.WriteLine(
            $"{asked} sets of states compared on {Seeds.Length} sites, {wider.Count} wider in the part:"
        );
        foreach (var example in wider.Take(40))
            output.WriteLine(example);
        asked.Should().BeGreaterThan(300);
        ((double)wider.Count / asked).Should().BeLessThan(0.05);
    }

    private static IEnumerable<(
        string Name,
        Diagram InSite,
        (Projected Search, Diagram States) Alone
    )> Answers(int seed)
    {
        var source = SiteGenerator.Write(2, seed, startersInLineUp: 2);
        var site = SiteBinder.Bind(PanelParser.Parse(source), KindLibrary.Standard).Site!;
        var outlines = new Outlines(site);
        var whole = new Scope(site, outlines, [.. outlines.Parts]).Netlist();
        foreach (var part in outlines.Parts.Where(p => !Boards.Contains(p.Tag[..1])))
        {
            var alone = new PartCheck(site, outlines, part).Netlist;
            if (Environment.GetEnvironmentVariable("DUMP") is { } dump)
                File.WriteAllText($"{dump}/{seed}-{part.Tag}.json", NetlistJson.ToText(alone, true));
            foreach (var failures in Chosen(alone, part, seed))
            foreach (
                var answer in Compared(
                    part,
                    whole,
                    alone,
                    [.. failures.Select(f => part.Prefix + f)],
                    failures
                )
            )
                yield return answer;
            string[] letIn =
            [
                .. alone.AllFailures().Where(f => f.EndsWith(".let-in", StringComparison.Ordinal)),
            ];
            foreach (var weld in WeldsElsewhere(outlines, part, seed))
            foreach (var answer in Compared(part, whole, alone, [weld], letIn))
                yield return answer;
        }
    }

    /// <summary>Contacts of other parts.</summary>
    private static IEnumerable<string> WeldsElsewhere(Outlines outlines, SitePart part, int seed) =>
        outlines
            .Parts.Where(p => p != part && !Boards.Contains(p.Tag[..1]))
            .SelectMany(p => p.Whole.AllFailures().Where(f => f.Contains(".weld")).Select(f => p.Prefix + f))
            .OrderBy(f => (f + seed).Sum(c => c * 7919) % 101)
            .Take(2);

    /// <summary>None, and five of the part's own.</summary>
    private static IEnumerable<string[]> Chosen(Netlist alone, SitePart part, int seed)
    {
        yield return [];
        var own = part.Whole.AllFailures().Intersect(alone.AllFailures()).ToArray();
        yield return [.. own.OrderBy(f => (f + seed).Sum(c => c * 7919) % 101).Take(5)];
    }

    private static IEnumerable<(string, Diagram, (Projected, Diagram))> Compared(
        SitePart part,
        Netlist whole,
        Netlist alone,
        string[] failuresInSite,
        string[] failures
    )
    {
        var big = new Projected(whole, failuresInSite, part.Prefix);
        var small = new Projected(alone, failures, "");
        var own = small.Names.Intersect(big.Names).ToHashSet();
        var with = failuresInSite.Length > 0 ? $" with {string.Join(", ", failuresInSite)}" : "";
        yield return (
            $"states of {part.Tag}{with}",
            big.CopyTo(small, big.Reached(own), own),
            (small, small.Reached(own))
        );
        foreach (
            var point in part.Whole.Points.Where(p => p.Device is not null && !part.Fed.Contains(p.Device))
        )
        {
            var live = big.Live($"{part.Prefix}{point.Name}", own);
            yield return (
                $"{part.Tag}/{point.Name} live{with}",
                big.CopyTo(small, live, own),
                (small, small.Live(point.Name, own))
            );
        }
    }

    /// <summary>A search, seen through some of its variables.</summary>
    private sealed class Projected
    {
        private readonly Behaviour behaviour;
        private readonly string prefix;
        private readonly Dictionary<string, string> nets;

        public Projected(Netlist netlist, string[] failures, string prefix)
        {
            this.prefix = prefix;
            behaviour = new Behaviour(netlist.WithFailures(failures.ToHashSet()), new DiagramTable(), 1);
            nets = behaviour.Netlist.Points.ToDictionary(p => p.Name, p => p.Net);
            Names =
            [
                .. behaviour
                    .Netlist.Variables.Where(v => v.Name.StartsWith(prefix, StringComparison.Ordinal))
                    .Select(v => v.Name[prefix.Length..]),
            ];
        }

        public IReadOnlyList<string> Names { get; }
        public DiagramTable Table => Space.Table;
        private StateSpace Space => behaviour.Space;

        public Diagram Reached(HashSet<string> own) => Through(behaviour.Reachable, own);

        public Diagram Live(string point, HashSet<string> own) =>
            Through(Table.And(behaviour.ReachableSettled, behaviour.Network.Live(nets[point])), own);

        public Diagram CopyTo(Projected other, Diagram states, HashSet<string> own)
        {
            var levels = new Dictionary<int, int>();
            foreach (var name in own)
            foreach (var (from, to) in LevelsOf(name).Zip(other.LevelsOf(name)))
                levels.Add(from, to);
            var copies = new Dictionary<Diagram, Diagram>();
            return Copy(states);

            Diagram Copy(Diagram f)
            {
                if (f.IsConstant)
                    return f;
                if (!copies.TryGetValue(f, out var copy))
                {
                    var variable = other.Table.Variable(levels[Table.Level(f)]);
                    copy = other.Table.IfThenElse(variable, Copy(Table.High(f)), Copy(Table.Low(f)));
                    copies.Add(f, copy);
                }
                return copy;
            }
        }

        /// <summary>A state of the first that is not of the second, variables at rest left out; empty when there is none.</summary>
        public string Example(Diagram states, Diagram others) =>
            Space.First(Table.Except(Table.And(states, Space.Domain), others)) is not { } state
                ? ""
                : string.Join(
                    " ",
                    Space
                        .Variables.Index()
                        .Where(v => v.Item.Values[state[v.Index]] != v.Item.Rest)
                        .Select(v => $"{v.Item.Name}={v.Item.Values[state[v.Index]]}")
                );

        private IReadOnlyList<int> LevelsOf(string own) => Space.LevelsOf(Space.IndexOf(prefix + own));

        private Diagram Through(Diagram states, HashSet<string> own) =>
            Table.Exists(
                states,
                Table.Cube(
                    Space
                        .Variables.Index()
                        .Where(v =>
                            !v.Item.Name.StartsWith(prefix, StringComparison.Ordinal)
                            || !own.Contains(v.Item.Name[prefix.Length..])
                        )
                        .SelectMany(v => Space.LevelsOf(v.Index))
                )
            );
    }
}
