using System.Text.Json;
using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit.Comparison;

public class IsolatingSetsAgainstInterpreterTests(ITestOutputHelper output)
{
    private const int Panels = 500;

    [Fact]
    public void Isolating_sets_are_those_that_brute_force_finds()
    {
        using var interpreter = new Interpreter();
        int several = 0,
            none = 0;
        foreach (var number in Enumerable.Range(200_000, Panels))
        {
            var (mine, theirs) = Compared(number, 128, interpreter);
            mine.Should().BeEquivalentTo(theirs, $"of panel {number}");
            several += theirs.Count >= 2 ? 1 : 0;
            none += theirs.Count == 0 ? 1 : 0;
        }
        output.WriteLine(
            $"{100.0 * several / Panels:0.0} % with two or more sets, {100.0 * none / Panels:0.0} % with none"
        );
        several.Should().BeGreaterThanOrEqualTo(30 * Panels / 100);
        none.Should().BeGreaterThanOrEqualTo(5 * Panels / 100);
    }

    /// <summary>The sets of some net of a random panel, by the engine and by the interpreter.</summary>
    internal static (List<string> Mine, List<string> Theirs) Compared(
        int number,
        int mostAssignments,
        IInterpreter interpreter
    )
    {
        var dice = new System.Random(number);
        var netlist = WithMoreIsolators(RandomPanels.Panel(number, mostAssignments), dice);
        var target = Target(netlist, dice);
        var answer = interpreter.Ask("isolate", netlist, $"\"target\":[{JsonSerializer.Serialize(target)}]");
        return (Mine(netlist, target), Theirs(answer));
    }

    /// <summary>Isolators of one to three poles put in at random places: in series, beside each other, across.</summary>
    private static Netlist WithMoreIsolators(Netlist netlist, System.Random dice)
    {
        for (var i = dice.Next(2, 6); i > 0; i--)
        {
            var name = $"QX{i}";
            var places = netlist
                .Elements.Where(e => e.Type is not (ElementType.Load or ElementType.Fault))
                .ToArray();
            var poles = Enumerable
                .Range(0, dice.Next(1, 3))
                .Select(_ => places[dice.Next(places.Length)].Id)
                .ToHashSet();
            netlist = netlist with
            {
                Variables = [.. netlist.Variables, Position(name)],
                Elements = [.. netlist.Elements.Select(e => poles.Contains(e.Id) ? Opened(e, name) : e)],
                Devices = [.. netlist.Devices, Isolator(name, poles)],
            };
        }
        return netlist;
    }

    private static Variable Position(string name) =>
        PanelSketch.TwoValued(name, VariableKind.Position, "open", "closed", Mover.Operator, Mover.Operator);

    private static Element Opened(Element element, string by) =>
        element with
        {
            Closed = Expression.AllOf(element.Closed, new VariableIs(by, "closed")),
        };

    private static NetlistDevice Isolator(string name, IEnumerable<string> poles) =>
        new()
        {
            Tag = name,
            Kind = "disconnect",
            Isolates = new(name, [.. poles], Lockable: true, Visible: true, Rank: 1),
        };

    private static string Target(Netlist netlist, System.Random dice)
    {
        string[] terminals = [.. netlist.Loads.SelectMany(l => l.Terminals).Where(n => n != netlist.Earth)];
        string[] nets = [.. netlist.Nets.Where(n => n != netlist.Earth)];
        var among = terminals.Length > 0 && dice.Next(4) > 0 ? terminals : nets;
        return among[dice.Next(among.Length)];
    }

    private static List<string> Mine(Netlist netlist, string target)
    {
        var sets = new IsolatingSets(new Isolators(netlist, new DiagramTable()), target);
        var told = sets.Cheapest(_ => 1).Select(set => Told(set.Select(act => act.Name))).ToList();
        sets.Count.Should().Be(told.Count);
        return told;
    }

    private static List<string> Theirs(JsonElement answer) =>
        [
            .. answer
                .GetProperty("sets")
                .EnumerateArray()
                .Zip(answer.GetProperty("discharge").EnumerateArray())
                .Select(p => Told(Names(p.First).Concat(Names(p.Second)))),
        ];

    private static IEnumerable<string> Names(JsonElement list) =>
        list.EnumerateArray().Select(e => e.GetString()!);

    private static string Told(IEnumerable<string> names) =>
        string.Join(" ", names.Order(StringComparer.Ordinal));
}
