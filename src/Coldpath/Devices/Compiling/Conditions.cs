using Coldpath.Devices.Ratings;
using Coldpath.Notation.Syntax;
using Coldpath.Wiring;
using Coldpath.Wiring.Failures;

namespace Coldpath.Devices.Compiling;

/// <summary>Where a condition stands, and so what it may ask for.</summary>
internal enum ConditionUse
{
    /// <summary>Of an element, a source or a constraint: variables only.</summary>
    Guard,

    /// <summary>Of a move or a converter: the network too; closed elements are asked for by their ids.</summary>
    Move,

    /// <summary>Of a state: the network too; closed elements are asked for by what closes them.</summary>
    State,
}

/// <summary>Makes expressions of the conditions of a kind. Ratings and flags become true or false on the way.</summary>
/// <param name="moving">Names of all variables and failures that the kind may declare.</param>
internal sealed class Conditions(
    RatingBook ratings,
    PanelFacts facts,
    Arithmetic arithmetic,
    Names names,
    Nets nets,
    IReadOnlySet<string> moving,
    KindFindings findings
)
{
    private readonly Dictionary<string, Expression> guards = new(StringComparer.Ordinal);
    private readonly HashSet<string> open = new(StringComparer.Ordinal);
    private readonly StaticTerms statics = new(ratings, facts, arithmetic, findings);

    /// <summary>Null means true.</summary>
    public Expression Of(ConditionSyntax? syntax, Pole? pole, ConditionUse use) =>
        syntax is null ? Expression.True : Term(syntax, pole, use);

    /// <summary>Whether an <c>if</c> holds.</summary>
    public bool IsSaid(ConditionSyntax syntax, Pole? pole)
    {
        if (IsStatic(syntax) && Term(syntax, pole, ConditionUse.State) is Constant decided)
            return decided.Value;
        findings.NotDecided(syntax.Span);
        return false;
    }

    /// <summary>Asks for nothing that moves.</summary>
    private bool IsStatic(ConditionSyntax syntax) =>
        syntax switch
        {
            AndSyntax and => and.Terms.All(IsStatic),
            OrSyntax or => or.Terms.All(IsStatic),
            NotSyntax not => IsStatic(not.Term),
            IsSyntax term => !moving.Contains(string.Join(' ', term.Subject)),
            SaidSyntax said => !moving.Contains(string.Join(' ', said.Name)),
            CompareSyntax or GivenSyntax => true,
            _ => false,
        };

    /// <summary>What closes an element: its condition, or its weld.</summary>
    public Expression Guard(NamedElement element)
    {
        if (guards.TryGetValue(element.Id, out var known))
            return known;
        if (!open.Add(element.Id))
        {
            findings.Circular(element.Line.Span, "what closes this element");
            return Expression.False;
        }
        var closed = Of(element.Line.ClosedWhen, element.Pole, ConditionUse.Guard);
        if (element.Line.Welds)
            closed = Expression.AnyOf(closed, ContactWeld.Happened(ContactWeld.Of(element.Id)));
        open.Remove(element.Id);
        guards.Add(element.Id, closed);
        return closed;
    }

    private Expression Term(ConditionSyntax syntax, Pole? pole, ConditionUse use) =>
        syntax switch
        {
            AndSyntax and => Expression.AllOf(and.Terms.Select(t => Term(t, pole, use)).ToList()),
            OrSyntax or => Expression.AnyOf(or.Terms.Select(t => Term(t, pole, use)).ToList()),
            NotSyntax not => Expression.Negate(Term(not.Term, pole, use)),
            IsSyntax term => Is(term, pole),
            CompareSyntax compare => statics.Compare(compare, pole),
            GivenSyntax given => statics.Given(given),
            SaidSyntax said => Said(said, pole),
            ClosedSyntax closed => Closed(closed, pole, use),
            _ when use == ConditionUse.Guard => Refused(syntax),
            _ => new NetworkTerms(ratings, arithmetic, names, nets, findings).Of(syntax, pole),
        };

    private Expression Refused(ConditionSyntax syntax)
    {
        findings.AsksTheNetwork(syntax.Span);
        return Expression.False;
    }

    private Expression Is(IsSyntax term, Pole? pole)
    {
        var name = string.Join(' ', term.Subject);
        var alike = names.Variables(name);
        if (alike.Count == 0)
            return statics.Is(term, pole, names.OfVariables);
        var value = string.Join(' ', term.Value);
        if (!alike[0].Values.Contains(value))
            findings.UnknownWord(term.Value[0].Span, $"value of {name}", value, alike[0].Values);
        return Quantified(
            term.Quantifier,
            Meant(alike, v => v.Pole, term, name, pole, term.Quantifier)
                .Select(v => (Expression)new VariableIs(v.Local, value))
        );
    }

    private Expression Said(SaidSyntax said, Pole? pole)
    {
        var name = string.Join(' ', said.Name);
        var alike = names.Variables(name).Where(v => v.Kind == VariableKind.Failure).ToList();
        if (alike.Count == 0)
            return said.Quantifier == Quantifier.No
                ? Expression.Negate(statics.Flag(said, names.OfVariables))
                : statics.Flag(said, names.OfVariables);
        return Quantified(
            said.Quantifier,
            Meant(alike, v => v.Pole, said, name, pole, said.Quantifier)
                .Select(v => FailureVariable.Happened(v.Local))
        );
    }

    private Expression Closed(ClosedSyntax term, Pole? pole, ConditionUse use)
    {
        var name = string.Join(' ', term.Name);
        var alike = names.Elements(name);
        if (alike.Count == 0)
            findings.Unknown(term.Span, "element", name, names.OfElements);
        return Quantified(
            term.Quantifier,
            Meant(alike, e => e.Pole, term, name, pole, term.Quantifier)
                .Select(e => use == ConditionUse.Move ? new Closed(e.Id) : Guard(e))
        );
    }

    /// <summary>Those that a name means: this pole's own, or all for <c>any</c> and <c>no</c>.</summary>
    private IEnumerable<T> Meant<T>(
        IReadOnlyList<T> alike,
        Func<T, Pole?> poleOf,
        SyntaxNode at,
        string name,
        Pole? pole,
        Quantifier quantifier
    )
    {
        if (quantifier != Quantifier.The || alike.Count < 2)
            return alike;
        var own = alike.Where(x => pole is not null && poleOf(x) == pole).ToList();
        if (own.Count == 0)
            findings.SayAnyOrNo(at.Span, name);
        return own;
    }

    private static Expression Quantified(Quantifier quantifier, IEnumerable<Expression> terms)
    {
        var any = Expression.AnyOf(terms.ToList());
        return quantifier == Quantifier.No ? Expression.Negate(any) : any;
    }
}
