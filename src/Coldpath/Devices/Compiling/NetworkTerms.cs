using Coldpath.Devices.Ratings;
using Coldpath.Notation.Syntax;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>Terms that ask how the network stands.</summary>
internal sealed class NetworkTerms(
    RatingBook ratings,
    Arithmetic arithmetic,
    Names names,
    Nets nets,
    KindFindings findings
)
{
    public Expression Of(ConditionSyntax syntax, Pole? pole) =>
        syntax switch
        {
            EnergisedSyntax energised => Energised(energised, pole),
            PullSyntax pull => Pull(pull, pole),
            FedSyntax fed => Fed(fed, pole),
            SingleSyntax single when Three(single.Terminals, pole) is [var a, var b, var c] =>
                new SinglePhased(a, b, c),
            JoinedSyntax joined => Joined(joined, pole),
            CarriesSyntax carries => Carries(carries, pole),
            _ => Misplaced(syntax),
        };

    private Expression Misplaced(ConditionSyntax syntax)
    {
        findings.UnknownWord(
            syntax.Span,
            "condition that can stand here",
            syntax.Span.Text,
            ["energised", "fed", "joined"]
        );
        return Expression.False;
    }

    private Energised Energised(EnergisedSyntax term, Pole? pole)
    {
        var (a, b) = nets.Of(term.Ends, pole);
        var grade = term.Loosely ? Grade.Loose : Grade.Solid;
        if (term.At is { } at)
            return new Energised(a, b, grade, 0.85 * arithmetic.Of(at) ?? 0, 1.10 * arithmetic.Of(at));
        var (low, high) = (
            term.Low is null ? null : arithmetic.Of(term.Low),
            term.High is null ? null : arithmetic.Of(term.High)
        );
        return new Energised(a, b, grade, low ?? 0, high);
    }

    private Expression Pull(PullSyntax term, Pole? pole)
    {
        var (a, b) = nets.Of(term.Ends, pole);
        var rated = arithmetic.Of(term.At);
        return term.Act switch
        {
            CoilAct.MustPull => CoilBand.MustPull(a, b, rated),
            CoilAct.MayPull => CoilBand.MayPull(a, b, rated),
            _ => CoilBand.MayHold(a, b, rated, arithmetic.IsDirect(term.At)),
        };
    }

    private Expression Fed(FedSyntax term, Pole? pole)
    {
        if (Three(term.Terminals, pole) is not [var a, var b, var c])
            return Expression.False;
        var order = term.Order?.Text switch
        {
            "forward" => PhaseOrder.Forward,
            "reverse" => PhaseOrder.Reverse,
            _ => PhaseOrder.Any,
        };
        var grade =
            term.Loosely ? Grade.Loose
            : term.InSeries ? Grade.Load
            : Grade.Solid;
        return new Fed(a, b, c, order, grade);
    }

    private Joined Joined(JoinedSyntax term, Pole? pole)
    {
        var (a, b) = nets.Of(term.Ends, pole);
        return new Joined(a, b);
    }

    private IReadOnlyList<string> Three(ListSyntax list, Pole? pole)
    {
        if (list.Names.Count != 3)
            findings.UnknownWord(list.Span, "list of three terminals", list.Span.Text, ["[L1, L2, L3]"]);
        return nets.Of(list, pole);
    }

    /// <summary>Elements by their name, or through a rating the elements of other devices.</summary>
    private Expression Carries(CarriesSyntax term, Pole? pole)
    {
        var name = string.Join(' ', term.Name);
        var alike = names.Elements(name);
        var own = alike.Where(e => term.Quantifier != Quantifier.The || alike.Count < 2 || e.Pole == pole);
        var any =
            alike.Count > 0 ? Expression.AnyOf(own.Select(e => new Carries(e.Id)).ToList())
            : ratings.Forms.Find(name) is { Form: PlainFormSyntax { Form: PlainForm.Devices } }
                ? Expression.AnyOf((ratings[name]?.Words ?? []).Select(t => new CarriesIn(t)).ToList())
            : null;
        if (any is null)
        {
            findings.Unknown(term.Span, "element", name, names.OfElements);
            return Expression.False;
        }
        return term.Quantifier == Quantifier.No ? Expression.Negate(any) : any;
    }
}
