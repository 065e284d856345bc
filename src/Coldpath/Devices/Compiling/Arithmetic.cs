using Coldpath.Devices.Ratings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Compiling;

/// <summary>Works numbers out, in base units.</summary>
internal sealed class Arithmetic(RatingBook ratings, KindFindings findings)
{
    private const string First = "first ";
    private const string Second = "second ";

    /// <summary>Null when a rating in it has no value.</summary>
    public double? Of(ArithmeticSyntax syntax) =>
        syntax switch
        {
            NumberSyntax n => n.Unit is null ? n.Value : BaseUnits.Convert(n.Value, n.Unit),
            RatingNameSyntax name => Named(name),
            SumSyntax sum => Sum(sum),
            ProductSyntax product => Product(product),
            NegativeSyntax negative => -Of(negative.Value),
            RootSyntax root => Of(root.Value) is { } value ? Math.Sqrt(value) : null,
            PercentOfSyntax percent => percent.Percent / 100 * Of(percent.Of),
            _ => null,
        };

    private double? Sum(SumSyntax syntax)
    {
        var total = Of(syntax.First);
        foreach (var operand in syntax.Rest)
            total += operand.Inverse ? -Of(operand.Value) : Of(operand.Value);
        return total;
    }

    private double? Product(ProductSyntax syntax)
    {
        var total = Of(syntax.First);
        foreach (var operand in syntax.Rest)
            total = operand.Inverse ? total / Of(operand.Value) : total * Of(operand.Value);
        return total;
    }

    /// <summary>The value, or 0 and a finding when there is none.</summary>
    public double Needed(ArithmeticSyntax syntax)
    {
        if (Of(syntax) is { } value && double.IsFinite(value))
            return value;
        findings.NoNumber(syntax.Span, $"'{syntax.Span.Text}'");
        return 0;
    }

    /// <summary>Whether it is a direct voltage.</summary>
    public bool IsDirect(ArithmeticSyntax syntax) =>
        syntax switch
        {
            NumberSyntax n => n.Unit is { } unit && IsDirect(unit),
            RatingNameSyntax name => ratings[Plain(name.Name)]?.Unit is { } unit && IsDirect(unit),
            PercentOfSyntax percent => IsDirect(percent.Of),
            _ => false,
        };

    /// <summary>As printed in the declaration when it is a rating, else worked out; null when it has no value.</summary>
    public string? Printed(ArithmeticSyntax syntax) =>
        syntax is RatingNameSyntax name ? ratings[name.Name]?.Text
        : Of(syntax) is not null ? syntax.Span.Text
        : null;

    public static bool IsDirect(string unit) => unit.EndsWith(" DC", StringComparison.Ordinal);

    private double? Named(RatingNameSyntax name)
    {
        if (IsKnown(name.Name))
            return ratings[name.Name]?.Value;
        var plain = Plain(name.Name);
        if (plain != name.Name && IsKnown(plain))
            return name.Name.StartsWith(Second, StringComparison.Ordinal)
                ? ratings[plain]?.Second
                : ratings[plain]?.Value;
        findings.Unknown(name.Span, "rating", name.Name, ratings.Forms.Names);
        return null;
    }

    private bool IsKnown(string name) => ratings.Forms.Find(name) is not null || ratings.IsDerived(name);

    private string Plain(string name) =>
        IsKnown(name) ? name
        : name.StartsWith(First, StringComparison.Ordinal) ? name[First.Length..]
        : name.StartsWith(Second, StringComparison.Ordinal) ? name[Second.Length..]
        : name;
}
