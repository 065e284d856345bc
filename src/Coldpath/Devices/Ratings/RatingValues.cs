using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Ratings;

/// <summary>Reads the value of a rating at the front of a row; null, and nothing taken, when it does not fit.</summary>
internal static class RatingValues
{
    public static Rating? Read(AtomRow row, TakesSyntax asked)
    {
        var start = row.At;
        var read = asked.Form switch
        {
            UnitFormSyntax form => Quantity(row, form),
            ChoiceFormSyntax form => Choice(row, form),
            PlainFormSyntax { Form: PlainForm.Number } => Number(row),
            PlainFormSyntax { Form: PlainForm.Text } => Text(row),
            PlainFormSyntax { Form: PlainForm.Positions } => Positions(row),
            _ => Devices(row),
        };
        if (read is null)
        {
            row.At = start;
            return null;
        }
        return read with { Name = RatingForms.NameOf(asked) };
    }

    private static Rating? Quantity(AtomRow row, UnitFormSyntax form)
    {
        var start = row.At;
        if (row.Ahead() is not QuantityAtom first || !BaseUnits.Fits(first.Unit, form.Unit))
            return null;
        row.Take();
        var unit = BaseUnits.Of(first.Unit);
        var value = BaseUnits.Convert(first.Value, first.Unit);
        if (form.SecondUnit is null)
        {
            double? dual = first.Second is { } second ? BaseUnits.Convert(second, first.Unit) : null;
            return new Rating("", first.Span.Text, value, dual, unit);
        }
        if (
            row.Matches("to") == 0
            || row.Ahead(1) is not QuantityAtom last
            || !BaseUnits.Fits(last.Unit, form.SecondUnit)
        )
            return null;
        row.At += 2;
        return new Rating("", row.Since(start).Text, value, BaseUnits.Convert(last.Value, last.Unit), unit);
    }

    private static Rating? Choice(AtomRow row, ChoiceFormSyntax form)
    {
        if (row.Longest(form.Choices) is not { } choice)
            return null;
        row.At += row.Matches(choice);
        return new Rating("", choice, Words: [choice]);
    }

    private static Rating? Number(AtomRow row) =>
        row.Ahead() is NumberAtom && row.Take() is NumberAtom number
            ? new Rating("", number.Text, number.Value)
            : null;

    /// <summary>Words up to a comma, or up to and with a text in quotes.</summary>
    private static Rating? Text(AtomRow row)
    {
        var parts = new List<string>();
        while (row.Ahead() is { } atom and not CommaAtom and not BarAtom)
        {
            row.Take();
            parts.Add(atom is TextAtom text ? text.Text : atom.Span.Text);
            if (atom is TextAtom)
                break;
        }
        return parts.Count == 0 ? null : new Rating("", string.Join(' ', parts));
    }

    private static Rating? Positions(AtomRow row)
    {
        if (AtomRow.WordOf(row.Ahead()) is null || row.Ahead(1) is not BarAtom)
            return null;
        var positions = new List<string>();
        do
        {
            if (AtomRow.WordOf(row.Ahead()) is not { } position)
                return null;
            row.Take();
            positions.Add(position);
        } while (row.Ahead() is BarAtom && row.Take() is BarAtom);
        return new Rating("", string.Join(" | ", positions), Words: positions);
    }

    private static Rating? Devices(AtomRow row)
    {
        if (row.Matches("between") > 0 || row.Matches("of") > 0)
            row.Take();
        var tags = new List<string>();
        do
        {
            if (
                row.Ahead() is not WordAtom tag
                || !tag.Text.Any(c => char.IsUpper(c) || char.IsAsciiDigit(c))
            )
                return null;
            row.Take();
            tags.Add(tag.Text);
        } while (row.Ahead() is AndAtom && row.Take() is AndAtom);
        return new Rating("", string.Join(" and ", tags), Words: tags);
    }
}
