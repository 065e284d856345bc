using Coldpath.Circuit.Diagrams;
using Coldpath.Circuit.Sequence;
using Coldpath.Tests.Circuit.Sequence;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Circuit.Comparison;

public class HandWorkedTests
{
    [Fact]
    public void The_interpreter_agrees_on_circuits_worked_by_hand()
    {
        Board[] boards =
        [
            Boards.ThreeWire(),
            Boards.ThreeWire(holdsFrom: "L1"),
            Boards.TwoWire(),
            Boards.Reversing(true, true),
            Boards.Reversing(true, false),
            Boards.Reversing(false, false),
        ];
        using var interpreter = new Interpreter();
        foreach (var netlist in boards.Select(b => b.Build()))
            Comparison
                .Differences(new Behaviour(netlist, new DiagramTable()), interpreter.Table(netlist))
                .Should()
                .BeEmpty();
    }
}
