using System.Globalization;
using Coldpath.Devices.Ratings;
using Coldpath.Notation.Syntax;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>Terms that are decided by the ratings of the device.</summary>
internal sealed class StaticTerms(
    RatingBook ratings,
    PanelFacts facts,
    Arithmetic arithmetic,
    KindFindings findings
)
{
    private const string PoleNumber = "pole";
    private const string RuleSet = "rules";

    public Expression Is(IsSyntax term, Pole? pole, IEnumerable<string> variables)
    {
        var name = string.Join(' ', term.Subject);
        var value = string.Join(' ', term.Value);
        if (name == PoleNumber)
            return Numbers(PoleOf(term, pole), value);
        if (name == RuleSet && ratings.Forms.Find(name) is null)
            return Decided(facts.Rules == value);
        if (ratings.Forms.Find(name) is not { } asked)
        {
            findings.Unknown(term.Span, "variable or rating", name, variables.Concat(ratings.Forms.Names));
            return Expression.False;
        }
        if (asked.Form is ChoiceFormSyntax choice && !choice.Choices.Contains(value))
            findings.UnknownWord(term.Value[0].Span, $"value of {name}", value, choice.Choices);
        return Compared(ratings[name], value);
    }

    public Expression Compare(CompareSyntax term, Pole? pole)
    {
        var name = string.Join(' ', term.Subject);
        double? given;
        if (name == PoleNumber)
            given = PoleOf(term, pole);
        else if (ratings.Forms.Find(name) is not null || ratings.IsDerived(name))
            given = ratings[name]?.Value;
        else
        {
            findings.Unknown(term.Span, "rating", name, ratings.Forms.Names);
            return Expression.False;
        }
        var bound = arithmetic.Needed(term.Bound);
        return Decided(term.AtLeast ? given >= bound : given <= bound);
    }

    public Expression Given(GivenSyntax term)
    {
        var name = string.Join(' ', term.Rating);
        if (ratings.Forms.Find(name) is null && !ratings.Forms.IsFlag(name))
            findings.Unknown(term.Span, "rating", name, ratings.Forms.Names);
        return Decided(ratings.Has(name));
    }

    public Expression Flag(SaidSyntax term, IEnumerable<string> variables)
    {
        var name = string.Join(' ', term.Name);
        if (!ratings.Forms.IsFlag(name))
            findings.Unknown(term.Span, "flag or failure", name, variables.Concat(ratings.Forms.Names));
        return Decided(ratings.Has(name));
    }

    /// <summary>A choice by its word, a number by its value, a voltage by its sort ("voltage is DC").</summary>
    private static Expression Compared(Rating? rating, string value) =>
        rating switch
        {
            null => Expression.False,
            { Words: [var word] } => Decided(word == value),
            { Unit: { } unit } when value is "DC" or "AC" => Decided(
                Arithmetic.IsDirect(unit) == (value == "DC")
            ),
            { Value: { } number } => Numbers(number, value),
            _ => Decided(rating.Text == value),
        };

    private double PoleOf(SyntaxNode at, Pole? pole)
    {
        if (pole is null)
            findings.OnlyInPole(at.Span, "'pole'");
        return pole?.Number ?? 0;
    }

    private static Expression Numbers(double given, string value) =>
        Decided(double.TryParse(value, CultureInfo.InvariantCulture, out var asked) && given == asked);

    private static Expression Decided(bool value) => value ? Expression.True : Expression.False;
}
