using Antlr4.Runtime;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    private ConditionSyntax Condition(Grammar.ConditionContext condition)
    {
        var terms = new List<ConditionSyntax>();
        var waiting = new List<RefSyntax>();
        foreach (var part in condition.conditionPart())
            if (Bare(part) is { } name)
                waiting.Add(name);
            else
                AddTerm(terms, waiting, part);
        if (waiting.Count > 0)
            report.Report(
                Wording.MissingState(waiting[^1].Span, waiting[^1].Name, ListHint(terms, waiting[^1]))
            );
        return Joined(condition, terms);
    }

    /// <summary>Names without a state take that of the term behind them.</summary>
    private void AddTerm(
        List<ConditionSyntax> terms,
        List<RefSyntax> waiting,
        Grammar.ConditionPartContext part
    )
    {
        var term = ConditionPart(part);
        if (waiting.Count > 0 && term is StateSyntax { Predicate: var shared })
            terms.AddRange(waiting.Select(name => new StateSyntax(name, shared, name.Span)));
        else if (waiting.Count > 0)
            report.Report(Wording.MissingState(waiting[0].Span, waiting[0].Name, null));
        waiting.Clear();
        terms.Add(term);
    }

    private ConditionSyntax ConditionPart(Grammar.ConditionPartContext part)
    {
        var inner =
            part.condition() is { } nested ? Condition(nested)
            : StateTerm(part.stateTerm()) is { Predicate.Count: > 0 } term ? term
            : NoState(StateTerm(part.stateTerm()));
        return IsNegated(part) ? new NotSyntax(inner, Span(part)) : inner;
    }

    private StateSyntax NoState(StateSyntax term)
    {
        report.Report(Wording.MissingState(term.Span, term.Subject.Name, null));
        return term;
    }

    private RefSyntax? Bare(Grammar.ConditionPartContext part) =>
        part.stateTerm() is { } context
        && !IsNegated(part)
        && StateTerm(context) is { Predicate.Count: 0 } term
            ? term.Subject
            : null;

    private bool IsNegated(ParserRuleContext part) =>
        part.ChildCount > 1
        && Text(part.Start) == "not"
        && part.GetChild(0) is Antlr4.Runtime.Tree.ITerminalNode;

    private StateSyntax StateTerm(Grammar.StateTermContext context)
    {
        var before = new List<WordSyntax> { Word(context.subjectWord()) };
        var after = new List<WordSyntax>();
        var terminals = Terminals(context.terminals());
        foreach (var word in context.stateWord())
            (terminals is not null && word.Start.StartIndex > terminals.Span.Start ? after : before).Add(
                Word(word)
            );
        var count = terminals is null ? SubjectLength(before) : before.Count;
        var last = terminals?.Span ?? before[count - 1].Span;
        var subject = new RefSyntax(before[..count], terminals, before[0].Span.Through(last));
        return new StateSyntax(subject, [.. before[count..], .. after], Span(context));
    }

    /// <summary>Up to the first word that looks like a tag, but never into the "at" of a position.</summary>
    private static int SubjectLength(List<WordSyntax> words)
    {
        var at = words.FindIndex(1, w => w.Text == "at");
        var tag = words.FindIndex(w => w.LooksLikeTag);
        return tag >= 0 && (at < 0 || tag < at) ? tag + 1 : 1;
    }

    /// <summary>"S1 at HAND or AUTO" means two positions of S1, which a condition says one by one.</summary>
    private static string? ListHint(List<ConditionSyntax> terms, RefSyntax name) =>
        terms.LastOrDefault() is StateSyntax { Predicate: [{ Text: "at" }, ..] } term
            ? $"write '{term.Subject.Name} at {name.Name}'"
            : null;

    /// <summary>The terms of a condition or guard under its one connective.</summary>
    private ConditionSyntax Joined(ParserRuleContext context, List<ConditionSyntax> terms)
    {
        if (terms.Count == 1)
            return terms[0];
        var connective = (Antlr4.Runtime.Tree.ITerminalNode?)(
            context.ChildCount > 1 ? context.GetChild(1) : null
        );
        return connective is not null && Text(connective.Symbol) == "or"
            ? new OrSyntax(terms, Span(context))
            : new AndSyntax(terms, Span(context));
    }
}
