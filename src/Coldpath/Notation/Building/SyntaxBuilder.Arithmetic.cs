using Antlr4.Runtime.Tree;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    private ArithmeticSyntax? OptionalSum(Grammar.SumContext? sum) => sum is null ? null : Sum(sum);

    private ArithmeticSyntax? First(Grammar.FirstContext? first) => OptionalSum(first?.sum());

    private ArithmeticSyntax Sum(Grammar.SumContext sum)
    {
        var products = sum.product();
        return products.Length == 1
            ? Product(products[0])
            : new SumSyntax(
                Product(products[0]),
                Enumerable
                    .Range(1, products.Length - 1)
                    .Select(i => new OperandSyntax(
                        SignBefore(sum, i) == Grammar.MINUS,
                        Product(products[i]),
                        Span(products[i])
                    ))
                    .ToArray(),
                Span(sum)
            );
    }

    private ArithmeticSyntax Product(Grammar.ProductContext product)
    {
        var factors = product.factor();
        return factors.Length == 1
            ? Factor(factors[0])
            : new ProductSyntax(
                Factor(factors[0]),
                Enumerable
                    .Range(1, factors.Length - 1)
                    .Select(i => new OperandSyntax(
                        SignBefore(product, i) == Grammar.SLASH,
                        Factor(factors[i]),
                        Span(factors[i])
                    ))
                    .ToArray(),
                Span(product)
            );
    }

    /// <summary>Operands and signs take turns among the children.</summary>
    private static int SignBefore(Antlr4.Runtime.ParserRuleContext context, int operand) =>
        ((ITerminalNode)context.GetChild(2 * operand - 1)).Symbol.Type;

    private ArithmeticSyntax Factor(Grammar.FactorContext factor)
    {
        var operand = Operand(factor.operand());
        var value =
            factor.PERCENT() is not null
                ? new PercentOfSyntax(Number(Text(factor.NUMBER().Symbol)), operand, Span(factor))
            : factor.children.Any(c => c is ITerminalNode { Symbol: var s } && Text(s) == "root")
                ? new RootSyntax(operand, Span(factor))
            : operand;
        return factor.MINUS() is null ? value : new NegativeSyntax(value, Span(factor));
    }

    private ArithmeticSyntax Operand(Grammar.OperandContext operand)
    {
        if (operand.sum() is { } sum)
            return Sum(sum);
        if (operand.NUMBER() is not { } number)
            return new RatingNameSyntax(Words([operand.ratingWord(), .. operand.plainWord()]), Span(operand));
        var unit = operand.PERCENT() is not null ? "%" : string.Join(' ', Words(operand.plainWord()));
        if (unit.Length > 0)
            CheckUnit(unit, Span(operand));
        return new NumberSyntax(Number(Text(number.Symbol)), unit.Length > 0 ? unit : null, Span(operand));
    }

    private void CheckUnit(string unit, Span at)
    {
        if (Units.IsUnitWithSort(unit))
            return;
        var first = unit.Split(' ')[0];
        var hint =
            first != unit && Units.IsUnit(first)
                ? Wording.CommaBehind(first)
                : SpellChecker.Hint(unit, Units.All);
        report.Report(Wording.UnknownUnit(at, unit, hint));
    }
}
