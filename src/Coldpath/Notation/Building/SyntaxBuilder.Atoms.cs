using System.Globalization;
using System.Text.RegularExpressions;
using Coldpath.Notation.Generated;
using Coldpath.Notation.Syntax;

namespace Coldpath.Notation.Building;

internal sealed partial class SyntaxBuilder
{
    /// <summary>"480", "480Y/277", "1/0", and the same with the unit stuck on: "480V", "1.5kW".</summary>
    [GeneratedRegex(
        @"^(?<first>\d+(\.\d+)?)(?<dual>Y?/(?<second>\d+(\.\d+)?))?(?<unit>[^\d./+=#'-]+[^./+=#'-]*)?$"
    )]
    private static partial Regex NumberForm();

    /// <summary>Ratings as a flat row; a number and its unit become one atom.</summary>
    private List<AtomSyntax> Atoms(Lexemes lexemes)
    {
        var atoms = new List<AtomSyntax>();
        for (var i = 0; i < lexemes.Count; )
            atoms.Add(Atom(lexemes, ref i));
        return atoms;
    }

    private AtomSyntax Atom(Lexemes lexemes, ref int i)
    {
        var first = lexemes[i];
        if (Quantity(lexemes, ref i) is { } quantity)
            return quantity;
        i++;
        var span = reading.Span(first);
        return first.Type switch
        {
            PanelLexer.COMMA => new CommaAtom(span),
            PanelLexer.BAR => new BarAtom(span),
            PanelLexer.TEXT => new TextAtom(reading.Text(first.Start + 1, first.End - 1), span),
            PanelLexer.NUMBER => new NumberAtom(Number(reading.Text(first)), reading.Text(first), span),
            _ when reading.Text(first) is "and" => new AndAtom(span),
            _ => new WordAtom(reading.Text(first), span),
        };
    }

    /// <summary>The quantity that begins at <paramref name="i"/>, or null; moves <paramref name="i"/> behind it.</summary>
    private QuantityAtom? Quantity(Lexemes lexemes, ref int i)
    {
        if (lexemes[i].Type is not (PanelLexer.NUMBER or PanelLexer.WORD))
            return null;
        var form = NumberForm().Match(reading.Text(lexemes[i]));
        if (!form.Success)
            return null;
        var next = i + 1;
        var unit = form.Groups["unit"].Value;
        if (unit.Length == 0 && next < lexemes.Count)
            unit = reading.Text(lexemes[next++]);
        if (!Units.IsUnit(unit))
            return null;
        if (next < lexemes.Count && Units.TakesCurrentSort(unit, reading.Text(lexemes[next])))
            unit = $"{unit} {reading.Text(lexemes[next++])}";
        var span = reading.Span(lexemes[i].Start, lexemes[next - 1].End);
        i = next;
        return Quantity(form, unit, span);
    }

    private static QuantityAtom Quantity(Match form, string unit, Findings.Span span)
    {
        var first = form.Groups["first"];
        var second = form.Groups["second"];
        var number = first.Value + form.Groups["dual"].Value;
        return unit == "AWG" && second is { Success: true, Value: "0" }
            ? new QuantityAtom(1 - Number(first.Value), null, number, unit, span)
            : new QuantityAtom(
                Number(first.Value),
                second.Success ? Number(second.Value) : null,
                number,
                unit,
                span
            );
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
