using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    private ConditionSyntax Guard(Grammar.GuardContext guard) =>
        Joined(guard, guard.guardPart().Select(GuardPart).ToList());

    private ConditionSyntax? OptionalGuard(Grammar.GuardContext? guard) =>
        guard is null ? null : Guard(guard);

    private ConditionSyntax GuardPart(Grammar.GuardPartContext part)
    {
        var inner = part.guard() is { } nested ? Guard(nested) : GuardTerm(part.guardTerm());
        return IsNegated(part) ? new NotSyntax(inner, Span(part)) : inner;
    }

    private KindTermSyntax GuardTerm(Grammar.GuardTermContext term) =>
        term switch
        {
            Grammar.EnergisedContext energised => Energised(energised),
            Grammar.PullContext pull => new PullSyntax(
                Act(pull),
                Pair(pull.pair()),
                Sum(pull.sum()),
                Span(pull)
            ),
            Grammar.FedContext fed => Fed(fed),
            Grammar.SingleContext single => new SingleSyntax(List(single.list()), Span(single)),
            Grammar.JoinedContext joined => new JoinedSyntax(Pair(joined.pair()), Span(joined)),
            Grammar.AtMostOneContext most => new AtMostOneSyntax(
                Words(most.name().SkipLast(1)),
                Words(most.name()[^1]),
                Span(most)
            ),
            Grammar.QuantifiedContext quantified => Quantified(quantified),
            _ => Named((Grammar.NamedContext)term),
        };

    private EnergisedSyntax Energised(Grammar.EnergisedContext term) =>
        new(
            Head(term) == "loosely",
            Pair(term.pair()),
            OptionalSum(term.band()?.low),
            OptionalSum(term.band()?.high),
            OptionalSum(term.band()?.at),
            Span(term)
        );

    private CoilAct Act(Grammar.PullContext pull) =>
        Head(pull) == "must" ? CoilAct.MustPull
        : Text(((Antlr4.Runtime.Tree.ITerminalNode)pull.GetChild(1)).Symbol) == "pull" ? CoilAct.MayPull
        : CoilAct.MayHold;

    private FedSyntax Fed(Grammar.FedContext term)
    {
        var order = term.Stop.TokenIndex > term.list().Stop.TokenIndex ? term.Stop : null;
        return new FedSyntax(
            Head(term) == "loosely",
            List(term.list()),
            order is null
                ? null
                : new WordSyntax(Text(order), reading.Span(order.StartIndex, order.StopIndex + 1)),
            Span(term)
        )
        {
            InSeries = Head(term) == "series",
        };
    }

    private KindTermSyntax Quantified(Grammar.QuantifiedContext term)
    {
        var quantifier = Head(term) == "any" ? Quantifier.Any : Quantifier.No;
        var words = Words(term.phrase());
        if (term.label() is { } value)
            return new IsSyntax(words, Words(value), Span(term)) { Quantifier = quantifier };
        var verb = term.Stop.TokenIndex > term.phrase().Stop.TokenIndex ? Text(term.Stop) : null;
        return verb switch
        {
            "closed" => new ClosedSyntax(quantifier, words, Span(term)),
            "carries" => new CarriesSyntax(quantifier, words, Span(term)),
            _ => new SaidSyntax(quantifier, words, Span(term)),
        };
    }

    private KindTermSyntax Named(Grammar.NamedContext term)
    {
        var words = Words(term.phrase());
        return term.guardSuffix() is not { } suffix
            ? new SaidSyntax(Quantifier.The, words, Span(term))
            : Head(suffix) switch
            {
                "is" => new IsSyntax(words, Words(suffix.label()), Span(term)),
                "given" => new GivenSyntax(words, Span(term)),
                "closed" => new ClosedSyntax(Quantifier.The, words, Span(term)),
                "carries" => new CarriesSyntax(Quantifier.The, words, Span(term)),
                _ => new CompareSyntax(words, IsAtLeast(suffix), Sum(suffix.sum()), Span(term)),
            };
    }

    private bool IsAtLeast(Grammar.GuardSuffixContext suffix) =>
        Text(((Antlr4.Runtime.Tree.ITerminalNode)suffix.GetChild(1)).Symbol) == "least";
}
