using System.Globalization;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Ratings;

/// <summary>The ratings that one device has: given, by default, or worked out.</summary>
internal sealed class RatingBook
{
    /// <summary>What stands for "as the panel's header says" after <c>default</c>.</summary>
    private const string FromSystem = "system";

    private readonly Dictionary<string, Rating> values = new(StringComparer.Ordinal);
    private readonly Dictionary<string, GivenRating> given = new(StringComparer.Ordinal);
    private readonly List<string> derived = [];

    private RatingBook(RatingForms forms, Span declaration)
    {
        Forms = forms;
        Declaration = declaration;
    }

    public RatingForms Forms { get; }

    public Span Declaration { get; }

    public static RatingBook Read(
        RatingForms forms,
        DeviceDeclaration device,
        PanelFacts facts,
        RatingFindings findings
    )
    {
        var book = new RatingBook(forms, device.Span);
        foreach (var read in new RatingReader(forms, new AtomRow(device.Ratings), findings).ReadAll())
        {
            book.values.Add(read.Value.Name, read.Value);
            book.given.Add(read.Value.Name, read);
        }
        foreach (var asked in forms.Takes.Where(t => !book.values.ContainsKey(RatingForms.NameOf(t))))
            if (DefaultOf(asked, facts) is { } value)
                book.values.Add(value.Name, value);
            else if (asked.Needed && facts.Unclear && IsOfSystem(asked))
                findings.LeftOpen();
            else if (asked.Needed)
                findings.Missing(device.Span, RatingForms.NameOf(asked), asked);
        return book;
    }

    /// <summary>The rating or derived number of a name; null when it has no value.</summary>
    public Rating? this[string name] => values.GetValueOrDefault(name);

    /// <summary>Whether a flag was said, or a rating has a value.</summary>
    public bool Has(string name) => values.ContainsKey(name);

    /// <summary>Where a rating was given; the declaration when it was not.</summary>
    public Span PlaceOf(string name) => given.TryGetValue(name, out var read) ? read.At : Declaration;

    /// <summary>A derived number; null when a rating that it needs has no value.</summary>
    public void Derive(string name, double? value)
    {
        derived.RemoveAll(d => d == name);
        derived.Add(name);
        if (value is { } number)
            values[name] = new Rating(name, number.ToString("0.###", CultureInfo.InvariantCulture), number);
        else
            values.Remove(name);
    }

    public bool IsDerived(string name) => derived.Contains(name);

    /// <summary>Those with a value, in declared order; derived ones last.</summary>
    public IReadOnlyList<Rating> InOrder =>
        [.. Forms.Names.Concat(derived).Distinct().Select(n => this[n]).OfType<Rating>()];

    private static Rating? DefaultOf(TakesSyntax asked, PanelFacts facts)
    {
        if (asked.Default is null)
            return null;
        var name = RatingForms.NameOf(asked);
        if (IsOfSystem(asked))
            return OfSystem(name, facts);
        if (asked.Form is ChoiceFormSyntax)
            return Chosen(name, asked.Default.Span.Text);
        return RatingValues.Read(new AtomRow([asked.Default]), asked);
    }

    private static bool IsOfSystem(TakesSyntax asked) => asked.Default is WordAtom { Text: FromSystem };

    private static Rating? OfSystem(string name, PanelFacts facts) =>
        name switch
        {
            "voltage" when facts.Voltage is { } volts => new Rating(
                name,
                Printed(volts, facts.Direct ? "V DC" : "V"),
                volts,
                facts.SecondVoltage,
                facts.Direct ? "V DC" : "V"
            ),
            "phases" when facts.Direct => Chosen(name, "1"),
            "phases" when facts.Phases is { } phases => Chosen(name, Printed(phases, "")),
            "frequency" when facts.Frequency is { } hertz => new Rating(
                name,
                Printed(hertz, "Hz"),
                hertz,
                Unit: "Hz"
            ),
            "earthing" when facts.Earthing is { } earthing => Chosen(name, earthing),
            "current" => Chosen(name, facts.Direct ? "dc" : "ac"),
            _ => null,
        };

    private static Rating Chosen(string name, string choice) => new(name, choice, Words: [choice]);

    private static string Printed(double value, string unit) =>
        $"{value.ToString("0.###", CultureInfo.InvariantCulture)} {unit}".TrimEnd();
}
