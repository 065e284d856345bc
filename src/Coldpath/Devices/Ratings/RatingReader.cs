using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Ratings;

/// <param name="Value">As read.</param>
/// <param name="At">Where it stands.</param>
internal sealed record GivenRating(Rating Value, Span At);

/// <summary>
/// Tells the ratings of a declaration apart: names first, the longest that fits; then bare values by their unit or
/// word, each to the first rating in declared order that takes it and has none yet.
/// </summary>
internal sealed class RatingReader(RatingForms forms, AtomRow row, RatingFindings findings)
{
    private readonly Dictionary<string, GivenRating> given = new(StringComparer.Ordinal);

    public IEnumerable<GivenRating> ReadAll()
    {
        while (!row.AtEnd)
            if (row.Ahead() is CommaAtom)
                row.Take();
            else if (!(Positions() || Named() || Short() || Bare()))
                Unknown();
        return given.Values;
    }

    private bool Named()
    {
        if (row.Longest(forms.Names) is not { } name)
            return false;
        var start = row.At;
        row.At += row.Matches(name);
        if (forms.IsFlag(name))
            return Keep(new Rating(name, "yes"), start);
        var asked = forms.Find(name)!;
        if (RatingValues.Read(row, asked) is { } value)
            return Keep(value, start);
        row.At = start;
        if (Bare())
            return true;
        row.At = start + row.Matches(name);
        if (row.AtEnd || row.Ahead() is CommaAtom)
            findings.NoValue(row.Since(start), name, asked);
        else
            findings.WrongValue(row.Take().Span, name, asked);
        return true;
    }

    private bool Positions()
    {
        var asked = forms.Takes.FirstOrDefault(t => t.Form is PlainFormSyntax { Form: PlainForm.Positions });
        var start = row.At;
        return asked is not null && RatingValues.Read(row, asked) is { } value && Keep(value, start);
    }

    private bool Short()
    {
        if (row.Ahead() is not WordAtom word || ShortForm.Read(word.Text, forms) is not { } value)
            return false;
        var start = row.At;
        row.Take();
        return Keep(value, start);
    }

    private bool Bare()
    {
        var start = row.At;
        var quoted = row.Ahead() is TextAtom;
        var fitting = new List<TakesSyntax>();
        foreach (
            var asked in forms.Takes.Where(t =>
                quoted || t.Form is not PlainFormSyntax { Form: PlainForm.Text }
            )
        )
        {
            row.At = start;
            if (RatingValues.Read(row, asked) is not { } value)
                continue;
            fitting.Add(asked);
            if (asked.Bare && !given.ContainsKey(value.Name))
                return Keep(value, start);
        }
        row.At = start;
        return fitting.Count > 0 && NotBare(fitting, start);
    }

    /// <summary>A quantity or choice that fits only ratings that are given already or want their names.</summary>
    private bool NotBare(List<TakesSyntax> fitting, int start)
    {
        fitting.RemoveAll(t => t.Form is PlainFormSyntax);
        if (fitting.Count == 0)
            return false;
        RatingValues.Read(row, fitting[0]);
        var free = fitting.Select(RatingForms.NameOf).Where(n => !given.ContainsKey(n)).ToList();
        if (free.Count > 0)
            findings.SayWhich(row.Since(start), free);
        else
            findings.Twice(row.Since(start), RatingForms.NameOf(fitting[0]));
        return true;
    }

    private bool Keep(Rating value, int start)
    {
        if (!given.TryAdd(value.Name, new GivenRating(value, row.Since(start))))
            findings.Twice(row.Since(start), value.Name);
        return true;
    }

    /// <summary>Words in a row that nothing takes are one mistake.</summary>
    private void Unknown()
    {
        var start = row.At;
        row.Take();
        while (
            row.Ahead() is WordAtom word
            && row.Longest(forms.Names) is null
            && ShortForm.Read(word.Text, forms) is null
        )
        {
            var before = row.At;
            if (
                forms.Takes.Any(t =>
                    t.Bare && t.Form is ChoiceFormSyntax && RatingValues.Read(row, t) is not null
                )
            )
            {
                row.At = before;
                break;
            }
            row.Take();
        }
        findings.Unknown(row.Since(start), forms);
    }
}
