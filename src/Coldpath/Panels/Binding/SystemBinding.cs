using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>Reads <c>480 V 3-phase 60 Hz, solidly earthed wye</c>.</summary>
internal static class SystemBinding
{
    private static readonly string[] Earthings =
    [
        "solidly earthed wye",
        "corner-earthed delta",
        "high-leg delta",
        "resistance-earthed",
        "unearthed",
        "TN-S",
        "TN-C",
        "TN-C-S",
        "TT",
        "IT",
        "earthed centre tap",
    ];

    public static PanelFacts Bind(SystemSyntax system, BindingFindings findings)
    {
        var facts = new PanelFacts();
        var earthing = new List<WordAtom>();
        foreach (var atom in system.Atoms)
            if (Said(facts, atom) is { } more)
                facts = more;
            else if (atom is WordAtom word)
                earthing.Add(word);
            else
                findings.Add(Complaint.Header.At(atom.Span, $"{atom.Span.Text} says nothing about a system"));
        foreach (var missing in Missing(facts))
            findings.Add(Complaint.Header.At(system.Span, $"the system does not say {missing}"));
        return facts with { Earthing = Earthing(system, earthing, findings) };
    }

    /// <summary>The facts with what the atom adds; null when it is part of the earthing or of nothing.</summary>
    private static PanelFacts? Said(PanelFacts facts, AtomSyntax atom) =>
        atom switch
        {
            CommaAtom => facts,
            QuantityAtom { Unit: "V" or "V AC" or "V DC" or "kV" } volts => facts with
            {
                Voltage = InVolts(volts, volts.Value),
                SecondVoltage = volts.Second is { } second ? InVolts(volts, second) : null,
                Direct = facts.Direct || volts.Unit == "V DC",
            },
            QuantityAtom { Unit: "Hz" } hertz => facts with { Frequency = hertz.Value },
            WordAtom { Text: "3-phase" } => facts with { Phases = 3 },
            WordAtom { Text: "1-phase" } => facts with { Phases = 1 },
            WordAtom { Text: "dc" } => facts with { Direct = true },
            _ => null,
        };

    private static double InVolts(QuantityAtom quantity, double value) =>
        quantity.Unit == "kV" ? value * 1000 : value;

    private static IEnumerable<string> Missing(PanelFacts facts)
    {
        if (facts.Voltage is null)
            yield return "its volts";
        if (facts.Phases is null && !facts.Direct)
            yield return "3-phase, 1-phase or dc";
        if (facts.Frequency is null && !facts.Direct)
            yield return "its frequency in Hz";
    }

    private static string? Earthing(SystemSyntax system, List<WordAtom> words, BindingFindings findings)
    {
        var earthing = string.Join(' ', words.Select(w => w.Text));
        if (Earthings.Contains(earthing))
            return earthing;
        var span = words.Count == 0 ? system.Span : words[0].Span.Through(words[^1].Span);
        var message =
            words.Count == 0
                ? "the system does not say how it is earthed"
                : $"\"{earthing}\" is no earthing that is known";
        var remedy = findings.DidYouMean(earthing, Earthings) ?? $"one of {string.Join(", ", Earthings)}";
        findings.Add(Complaint.Header.At(span, message, remedy: remedy));
        return null;
    }
}
