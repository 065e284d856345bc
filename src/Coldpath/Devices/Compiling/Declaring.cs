using Coldpath.Notation.Syntax;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Devices.Compiling;

/// <summary>Enters what the lines of a kind declare, so that conditions may speak of what stands below them.</summary>
internal sealed class Declaring(KindContext context)
{
    private static readonly string[] ArmatureValues = [Armature.Out, Armature.In];
    private static readonly string[] FailureValues = [FailureVariable.No, FailureVariable.Yes];

    public static readonly WordTable<VariableKind> Sorts = new(
        new("process", VariableKind.Process),
        new("condition", VariableKind.Condition),
        new("cell", VariableKind.Cell),
        new("timer", VariableKind.Timer),
        new("trip", VariableKind.Trip)
    );

    public void DeclareAll(IReadOnlyList<PlacedLine> lines)
    {
        foreach (var bar in lines.Select(l => l.Line).OfType<BarSyntax>())
        foreach (var terminal in bar.Terminals.Take(context.Unfolding.Count(bar.First, bar.Terminals.Count)))
            if (!Nets.IsAny(terminal))
                context.Nets.Terminal(terminal);
        foreach (var placed in lines)
            if (NameOf(placed) is var (name, kind, values))
                context.Variables.Add(placed, context.Names.Declare(name, placed.Pole, kind, values));
            else if (placed.Line is ElementSyntax element)
                DeclareElement(element, placed);
    }

    private (WordSyntax, VariableKind, IReadOnlyList<string>)? NameOf(PlacedLine placed) =>
        placed.Line switch
        {
            VariableSyntax v => (v.Name, SortOf(v), [.. v.Values.Select(w => w.Text)]),
            PositionsSyntax p => (p.Variable, VariableKind.Position, PositionValues.Of(p, context)),
            CoilSyntax c => (c.Moves, VariableKind.Armature, ArmatureValues),
            FailureSyntax f => (f.Name, VariableKind.Failure, FailureValues),
            _ => null,
        };

    private VariableKind SortOf(VariableSyntax variable) =>
        variable.Sort is { } sort ? context.Word(sort, "sort of variable", Sorts) : VariableKind.Position;

    private void DeclareElement(ElementSyntax element, PlacedLine placed)
    {
        if ((element.Ends ?? placed.Pole?.Ends) is not { } ends)
        {
            context.Findings.OnlyInPole(element.Span, "an element without terminals");
            return;
        }
        var (a, b) = element.Ends is null ? context.Nets.Of(ends, null) : context.Nets.Of(ends, placed.Pole);
        context.Elements.Add(placed, context.Names.Declare(element, placed.Pole, a, b));
    }
}
