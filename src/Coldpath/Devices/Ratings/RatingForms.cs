using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Ratings;

/// <summary>The ratings and flags that a kind takes, in declared order.</summary>
internal sealed class RatingForms
{
    private readonly Dictionary<string, TakesSyntax> takes;
    private readonly HashSet<string> flags;

    public RatingForms(IEnumerable<KindLineSyntax> lines)
    {
        InOrder = [.. lines.Where(l => l is TakesSyntax or FlagSyntax)];
        takes = InOrder.OfType<TakesSyntax>().DistinctBy(NameOf).ToDictionary(NameOf);
        flags = [.. InOrder.OfType<FlagSyntax>().Select(NameOf)];
    }

    /// <summary><see cref="TakesSyntax"/> and <see cref="FlagSyntax"/>.</summary>
    public IReadOnlyList<KindLineSyntax> InOrder { get; }

    public IEnumerable<TakesSyntax> Takes => InOrder.OfType<TakesSyntax>();

    public IEnumerable<string> Names => InOrder.Select(NameOf);

    public TakesSyntax? Find(string name) => takes.GetValueOrDefault(name);

    public bool IsFlag(string name) => flags.Contains(name);

    public static string NameOf(KindLineSyntax line) =>
        line switch
        {
            TakesSyntax rating => string.Join(' ', rating.Name),
            FlagSyntax flag => string.Join(' ', flag.Name),
            _ => "",
        };

    /// <summary>What it takes, for messages: "current in A", "category of AC-1 | AC-3", "mirror contacts".</summary>
    public string Describe() =>
        InOrder.Count == 0 ? "no ratings" : string.Join(", ", InOrder.Select(Describe));

    private static string Describe(KindLineSyntax line) =>
        line is not TakesSyntax rating
            ? NameOf(line)
            : rating.Form switch
            {
                UnitFormSyntax { SecondUnit: { } second } form =>
                    $"{NameOf(line)} in {form.Unit} to {second}",
                UnitFormSyntax form => $"{NameOf(line)} in {form.Unit}",
                ChoiceFormSyntax form => $"{NameOf(line)} {string.Join(" | ", form.Choices)}",
                PlainFormSyntax { Form: PlainForm.Number } => $"{NameOf(line)} as a number",
                PlainFormSyntax { Form: PlainForm.Text } => $"{NameOf(line)} as a text",
                PlainFormSyntax { Form: PlainForm.Positions } => "positions such as HAND | OFF | AUTO",
                _ => $"{NameOf(line)} such as K1 and K2",
            };
}
