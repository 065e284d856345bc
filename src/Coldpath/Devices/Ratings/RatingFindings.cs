using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Ratings;

/// <summary>What there is to say about the ratings of a declaration.</summary>
internal sealed class RatingFindings(string kind, string tag)
{
    private const string MissingCode = "D005";

    private readonly List<Finding> findings = [];
    private bool leftOpen;

    public IReadOnlyList<Finding> InOrder => findings;

    /// <summary>Whether a rating that the kind needs is not there.</summary>
    public bool HasMissing => leftOpen || findings.Exists(f => f.Code == MissingCode);

    /// <summary>A needed rating is missing for a reason that was told elsewhere.</summary>
    public void LeftOpen() => leftOpen = true;

    public void Unknown(Span at, RatingForms forms) =>
        Add(
            "D001",
            "unknown-rating",
            at,
            $"{Article(kind)} takes no '{at.Text}'",
            Hint(at, forms) ?? $"it takes {forms.Describe()}"
        );

    public void Twice(Span at, string name) =>
        Add("D002", "rating-twice", at, $"{name} of {tag} is given twice", "leave one of the two");

    public void WrongValue(Span at, string name, TakesSyntax asked) =>
        Add(
            "D003",
            "wrong-rating",
            at,
            $"{name} of {tag} is {Asked(asked.Form)}, not '{at.Text}'",
            Example(name, asked)
        );

    public void NoValue(Span at, string name, TakesSyntax asked) =>
        Add(
            "D003",
            "wrong-rating",
            at,
            $"{name} of {tag} has no value: it is {Asked(asked.Form)}",
            Example(name, asked)
        );

    public void SayWhich(Span at, IReadOnlyList<string> names) =>
        Add(
            "D004",
            "unclear-rating",
            at,
            $"'{at.Text}' of {tag} needs its name in front",
            $"write {string.Join(" or ", names.Select(n => $"'{n} {at.Text}'"))}"
        );

    public void Missing(Span at, string name, TakesSyntax asked) =>
        Add("D005", "missing-rating", at, $"{tag} needs {name}: {Asked(asked.Form)}", Example(name, asked));

    public void OutOfRange(Span at, string name, double given, int most) =>
        Add(
            "D006",
            "rating-out-of-range",
            at,
            $"{name} of {tag} is {given:0.###}, and {Article(kind)} has 1 to {most}",
            null
        );

    private static string? Hint(Span at, RatingForms forms)
    {
        var choices = forms.Takes.Select(t => t.Form).OfType<ChoiceFormSyntax>().SelectMany(f => f.Choices);
        return SpellChecker.Hint(at.Text, forms.Names.Concat(choices));
    }

    private static string Example(string name, TakesSyntax asked)
    {
        var value = asked.Form switch
        {
            UnitFormSyntax { SecondUnit: { } second } form => $"1 {form.Unit} to 2 {second}",
            UnitFormSyntax form => $"1 {form.Unit}",
            ChoiceFormSyntax form => form.Choices[0],
            PlainFormSyntax { Form: PlainForm.Number } => "1",
            PlainFormSyntax { Form: PlainForm.Text } => "\"…\"",
            PlainFormSyntax { Form: PlainForm.Positions } => "HAND | OFF | AUTO",
            _ => "K1 and K2",
        };
        return asked.Bare ? $"write for example '{value}'" : $"write for example '{name} {value}'";
    }

    private static string Asked(RatingFormSyntax form) =>
        form switch
        {
            UnitFormSyntax { SecondUnit: { } second } f => $"two quantities, in {f.Unit} to {second}",
            UnitFormSyntax f => $"a quantity in {f.Unit}",
            ChoiceFormSyntax f => $"one of {string.Join(", ", f.Choices)}",
            PlainFormSyntax { Form: PlainForm.Number } => "a number",
            PlainFormSyntax { Form: PlainForm.Text } => "a text",
            PlainFormSyntax { Form: PlainForm.Positions } => "a list of positions",
            _ => "the tags of other devices",
        };

    private static string Article(string kind) => ("aeiou".Contains(kind[0]) ? "an " : "a ") + kind;

    private void Add(string code, string name, Span at, string message, string? remedy) =>
        findings.Add(
            new Finding
            {
                Code = code,
                Name = name,
                Severity = Severity.Defect,
                Message = message,
                Location = at,
                Devices = [tag],
                Remedy = remedy,
            }
        );
}
