using Coldpath.Notation.Syntax;
using Grammar = Coldpath.Notation.Generated.PanelParser;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    /// <param name="line">The whole line, for the lexemes of a default.</param>
    public KindLineSyntax Takes(Grammar.TakesContext context, Line line)
    {
        var options = context.takesOption();
        var value = options.Select(o => o.defaultValue()).LastOrDefault(v => v is not null);
        return new TakesSyntax(
            Words(context.phrase()),
            Form(context.ratingForm()),
            options.Any(o => Head(o) == "bare"),
            options.Any(o => Head(o) == "needed"),
            value is null ? null : Default(value, line),
            Span(context)
        );
    }

    private RatingFormSyntax Form(Grammar.RatingFormContext form) =>
        form.unit() is { Length: > 0 } units
            ? new UnitFormSyntax(Unit(units[0]), units.Length > 1 ? Unit(units[1]) : null, Span(form))
        : form.choice() is { Length: > 0 } choices
            ? new ChoiceFormSyntax(
                choices.Select(c => string.Join<WordSyntax>(' ', Words(c.label()))).ToArray(),
                Span(form)
            )
        : new PlainFormSyntax(Shape(form.ratingShape()), Span(form));

    private string Unit(Grammar.UnitContext context)
    {
        var unit = context.PERCENT() is not null
            ? "%"
            : string.Join<WordSyntax>(' ', Words(context.plainWord()));
        CheckUnit(unit, Span(context));
        return unit;
    }

    private PlainForm Shape(Grammar.RatingShapeContext shape) =>
        Head(shape) switch
        {
            "number" => PlainForm.Number,
            "text" => PlainForm.Text,
            "positions" => PlainForm.Positions,
            _ => PlainForm.Devices,
        };

    /// <summary>A choice of several words becomes one atom.</summary>
    private AtomSyntax Default(Grammar.DefaultValueContext context, Line line)
    {
        var (first, end) = (context.Start.TokenIndex, context.Stop.TokenIndex + 1);
        var atoms = Atoms(line.Lexemes[first..end]);
        if (atoms.Count == 1)
            return atoms[0];
        if (!atoms.All(a => a is WordAtom))
            report.Report(Wording.OneDefault(Span(context)));
        return new WordAtom(string.Join(' ', atoms.OfType<WordAtom>().Select(a => a.Text)), Span(context));
    }

    public KindLineSyntax Flag(Grammar.FlagContext line) => new FlagSyntax(Words(line.name()), Span(line));

    public KindLineSyntax Let(Grammar.LetContext line) =>
        new LetSyntax(Words(line.phrase()), Sum(line.sum()), Span(line));

    public KindLineSyntax Means(Grammar.MeansContext line) => new MeansSyntax(Text(line.TEXT()), Span(line));

    public KindLineSyntax Like(Grammar.LikeContext line) => new LikeSyntax(Words(line.phrase()), Span(line));

    public KindLineSyntax Letter(Grammar.LetterContext line) =>
        new LetterSyntax(Word(line.name()), Span(line));

    public KindLineSyntax Symbol(Grammar.SymbolContext line) =>
        new SymbolSyntax(Words(line.name()), Span(line));
}
