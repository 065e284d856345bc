using Coldpath.Findings;

namespace Coldpath.Notation.Syntax;

/// <summary>A number worked out from ratings. Operands lie flat, so that a long sum is not a deep tree.</summary>
public abstract record ArithmeticSyntax(Span Span) : SyntaxNode(Span);

/// <summary>A number without or with a unit: <c>3</c>, <c>24 V</c>.</summary>
/// <param name="Unit">As in <see cref="Units"/>; null for none. "85 %" without <c>of</c> has the unit "%".</param>
public sealed record NumberSyntax(double Value, string? Unit, Span Span) : ArithmeticSyntax(Span);

/// <summary>A rating or a <c>let</c> by its name, of one word or more.</summary>
public sealed record RatingNameSyntax(IReadOnlyList<WordSyntax> Words, Span Span) : ArithmeticSyntax(Span)
{
    public string Name => string.Join(' ', Words);
}

/// <summary><c>a + b - c</c>: the first operand and then at least one more, each with its sign.</summary>
public sealed record SumSyntax(ArithmeticSyntax First, IReadOnlyList<OperandSyntax> Rest, Span Span)
    : ArithmeticSyntax(Span);

/// <summary><c>a * b / c</c>, worked from the left: the first operand and then at least one more.</summary>
public sealed record ProductSyntax(ArithmeticSyntax First, IReadOnlyList<OperandSyntax> Rest, Span Span)
    : ArithmeticSyntax(Span);

/// <param name="Inverse">Subtracted in a sum, a divisor in a product.</param>
public sealed record OperandSyntax(bool Inverse, ArithmeticSyntax Value, Span Span) : SyntaxNode(Span);

/// <summary><c>- a</c>.</summary>
public sealed record NegativeSyntax(ArithmeticSyntax Value, Span Span) : ArithmeticSyntax(Span);

/// <summary><c>root 3</c>: the square root.</summary>
public sealed record RootSyntax(ArithmeticSyntax Value, Span Span) : ArithmeticSyntax(Span);

/// <summary><c>85 % of coil</c>.</summary>
/// <param name="Percent">85.</param>
public sealed record PercentOfSyntax(double Percent, ArithmeticSyntax Of, Span Span) : ArithmeticSyntax(Span);
