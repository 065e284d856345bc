using Coldpath.Notation.Syntax;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Devices.Compiling;

/// <summary>Variables with their moves, in the order of the lines that declare them.</summary>
internal sealed class VariableBuilder(KindContext context)
{
    private static readonly WordTable<Mover> Movers = new(
        new("operator", Mover.Operator),
        new("process", Mover.Process),
        new("settle", Mover.Settle),
        new("delay", Mover.Delay),
        new("trip", Mover.Trip),
        new("condition", Mover.Condition)
    );

    private static readonly WordTable<FailureClass> Classes = new(
        new("contact", FailureClass.Contact),
        new("semiconductor", FailureClass.Semiconductor),
        new("coil", FailureClass.Coil),
        new("wiring", FailureClass.Wiring),
        new("control", FailureClass.Control)
    );

    private readonly List<Variable> variables = [];
    private readonly List<Operation> powered = [];

    /// <summary>The latest variable that takes moves.</summary>
    private int? current;

    public IReadOnlyList<Variable> Variables => variables;

    public IReadOnlyList<Operation> Powered => powered;

    public void Add(PlacedLine placed)
    {
        switch (placed.Line)
        {
            case VariableSyntax line:
                AddVariable(line, context.Variables[placed]);
                break;
            case PositionsSyntax line:
                AddPositions(line, context.Variables[placed]);
                break;
            case CoilSyntax line:
                AddArmature(line, context.Variables[placed]);
                break;
            case FailureSyntax line:
                AddFailure(line, context.Variables[placed]);
                break;
            case ElementSyntax { Welds: true } when context.Elements.TryGetValue(placed, out var element):
                variables.Add(ContactWeld.Of(element.Id));
                break;
            case MoveSyntax line:
                AddMove(line, placed.Pole);
                break;
        }
    }

    private void AddVariable(VariableSyntax line, NamedVariable named)
    {
        foreach (var value in new[] { line.Rest, line.Powered }.OfType<WordSyntax>())
            CheckValue(value, named.Values, line.Name.Text);
        current = variables.Count;
        variables.Add(
            new Variable
            {
                Name = named.Local,
                Device = "",
                Kind = named.Kind,
                Values = named.Values,
                Rest = line.Rest?.Text ?? named.Values[0],
                Momentary = line.Momentary,
            }
        );
        if (line.Powered is { } closed)
            powered.Add(new Operation(named.Local, closed.Text));
    }

    private void AddPositions(PositionsSyntax line, NamedVariable named)
    {
        if (named.Values.Count == 0)
        {
            context.Findings.Unknown(
                line.Span,
                "list of positions",
                string.Join(' ', line.Of),
                context.Ratings.Forms.Names
            );
            return;
        }
        current = variables.Count;
        variables.Add(
            new Variable
            {
                Name = named.Local,
                Device = "",
                Kind = VariableKind.Position,
                Values = named.Values,
                Rest = PositionValues.Rest(line, context),
                Moves = PositionValues.Moves(line, context),
            }
        );
    }

    private void AddArmature(CoilSyntax line, NamedVariable named)
    {
        var (a, b) = context.Nets.Of(line.Ends, null);
        var rated = context.Arithmetic.Of(line.At);
        if (rated is null)
            context.Assumed.Add(
                $"the voltage of its {PartBuilder.NameOf(line)} is not given: any voltage is taken to do"
            );
        variables.Add(
            new Variable
            {
                Name = named.Local,
                Device = "",
                Kind = VariableKind.Armature,
                Values = named.Values,
                Rest = Armature.Out,
                Coil = [a, b],
                Moves = CoilBand.Moves(a, b, rated, context.Arithmetic.IsDirect(line.At)),
            }
        );
    }

    private void AddFailure(FailureSyntax line, NamedVariable named)
    {
        var when = context.Conditions.Of(line.When, named.Pole, ConditionUse.Move);
        variables.Add(
            FailureVariable.Of(
                named.Local,
                device: "",
                context.Word(line.Class, "class of failure", Classes),
                when
            )
        );
    }

    private void AddMove(MoveSyntax line, Pole? pole)
    {
        if (current is not { } at)
        {
            context.Findings.NoMoves(line.Span);
            return;
        }
        var variable = variables[at];
        CheckValue(line.From, variable.Values, variable.Name);
        CheckValue(line.To, variable.Values, variable.Name);
        var move = new Move(
            line.From.Text,
            line.To.Text,
            context.Word(line.By, "mover", Movers),
            context.Conditions.Of(line.When, pole, ConditionUse.Move),
            line.May is null ? Expression.False : context.Conditions.Of(line.May, pole, ConditionUse.Move)
        );
        variables[at] = variable with { Moves = [.. variable.Moves, SureMove.Of(move)] };
    }

    private void CheckValue(WordSyntax value, IReadOnlyList<string> values, string variable)
    {
        if (!values.Contains(value.Text))
            context.Findings.UnknownWord(value.Span, $"value of {variable}", value.Text, values);
    }
}
