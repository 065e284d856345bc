using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>Finds out what each name speaks of, and says once what it cannot mean.</summary>
internal sealed class RefReader(
    Roster roster,
    Nodes nodes,
    IReadOnlySet<string> brokenWords,
    BindingFindings findings
)
{
    private readonly Dictionary<int, Reading> readings = [];
    private readonly HashSet<string> partWords =
    [
        .. roster
            .InOrder.Where(d => d.Blueprint is not null)
            .SelectMany(d => PartNames(d.Blueprint!))
            .SelectMany(n => n.Split(' ')),
    ];

    public Reading Read(RefSyntax reference)
    {
        if (!readings.TryGetValue(reference.Span.Start, out var reading))
            readings.Add(reference.Span.Start, reading = ReadAnew(reference));
        return reading;
    }

    /// <summary>Names of parts and families of a device, as they are written around its tag.</summary>
    public static IEnumerable<string> PartNames(Blueprint blueprint) =>
        blueprint
            .Parts.Select(p => p.Name)
            .Concat(blueprint.Families.Select(f => f.Name))
            .Where(n => n.Length > 0)
            .Distinct();

    private Reading ReadAnew(RefSyntax reference)
    {
        if (findings.AreTooMany)
            return new Unreadable(reference);
        if (Nodes.NamedBy(reference) is { } named && IsNode(named.Text))
            return NodeNamed(reference, named.Text);
        var tags = Enumerable
            .Range(0, reference.Words.Count)
            .Where(i => roster.Find(reference.Words[i].Text) != null);
        var readable = tags.Select(i => ReadDevice(reference, i)).ToList();
        if (readable.Find(r => r is not null) is { } reading)
            return reading;
        if (readable.Count > 0)
            return UnknownPart(reference);
        var name = reference.Words[0].Text;
        if (reference.Words.Count == 1 && IsNode(name))
            return reference.Terminals is null ? NodeNamed(reference, name) : NodeWithTerminals(reference);
        return Unknown(reference);
    }

    private bool IsNode(string name) => name == Pin.Earth.Name || nodes.Contains(name);

    private static NodeReading NodeNamed(RefSyntax reference, string name) =>
        new(reference, new Pin(null, name));

    /// <summary>Null when the words around the tag name no part of it.</summary>
    private Reading? ReadDevice(RefSyntax reference, int tagAt)
    {
        var device = roster.Find(reference.Words[tagAt].Text)!;
        if (device.Blueprint is null)
            return new Unreadable(reference);
        var others = reference.Words.Where((_, i) => i != tagAt).ToList();
        var words = string.Join(' ', others);
        if (words.Length == 0 || IsPart(device.Blueprint, words))
            return new DeviceReading(reference, device, words, []);
        var family = device.Blueprint.Families.FirstOrDefault(f =>
            f.Positions is not null && StartsWith(words, f)
        );
        return family is null
            ? null
            : AtPositions(reference, device, family, others.Skip(Count(family.Name)));
    }

    private static bool IsPart(Blueprint blueprint, string words) =>
        blueprint.Parts.Any(p => p.Name == words)
        || blueprint.Families.Any(f => f.Name == words && f.Positions is null);

    private static bool StartsWith(string words, ContactFamily family) =>
        words.StartsWith(family.Name + " ", StringComparison.Ordinal);

    private static int Count(string words) => words.Split(' ').Length;

    private Reading AtPositions(
        RefSyntax reference,
        Declared device,
        ContactFamily family,
        IEnumerable<WordSyntax> words
    )
    {
        var known = device
            .Blueprint!.Network.Variables.Where(v => v.Name == family.Positions)
            .SelectMany(v => v.Values)
            .Where(v => !v.Contains('>'))
            .ToList();
        var positions = new List<string>();
        foreach (var (position, span) in SplitAtOr(words))
        {
            positions.Add(position);
            if (known.Contains(position))
                continue;
            var message = $"{device.Tag} has no position {position}; it has {string.Join(", ", known)}";
            findings.Add(
                Complaint.UnknownPart.At(span, message, device.Tag, findings.DidYouMean(position, known))
            );
            return new Unreadable(reference);
        }
        return new DeviceReading(reference, device, family.Name, [.. known.Where(positions.Contains)]);
    }

    private static IEnumerable<(string Position, Span Span)> SplitAtOr(IEnumerable<WordSyntax> words)
    {
        var open = new List<WordSyntax>();
        foreach (var word in words.Append(null))
        {
            if (word is { Text: not "or" })
            {
                open.Add(word);
                continue;
            }
            if (open.Count > 0)
                yield return (string.Join(' ', open), open[0].Span.Through(open[^1].Span));
            open.Clear();
        }
    }

    private Unreadable UnknownPart(RefSyntax reference)
    {
        var tag = reference.Words.First(w => roster.Find(w.Text) is not null);
        var words = string.Join(' ', reference.Words.Where(w => w != tag));
        var parts = PartNames(roster.Find(tag.Text)!.Blueprint!).ToList();
        var has = parts.Count == 0 ? "has no parts to name" : $"has {string.Join(", ", parts)}";
        var message = $"{tag} has no part called \"{words}\"; it {has}";
        findings.Add(
            Complaint.UnknownPart.At(reference.Span, message, tag.Text, findings.DidYouMean(words, parts))
        );
        return new Unreadable(reference);
    }

    private Unreadable NodeWithTerminals(RefSyntax reference)
    {
        var message = $"{reference.Name} is a node and has no terminals";
        findings.Add(Complaint.UnknownTerminal.At(reference.Span, message));
        return new Unreadable(reference);
    }

    private Unreadable Unknown(RefSyntax reference)
    {
        var meant = TagAmong(reference);
        if (brokenWords.Contains(meant.Text))
            return new Unreadable(reference);
        var isNode = IsNode(meant.Text);
        var message = isNode ? $"{meant} is a node, not a device with parts" : $"{meant} is not declared";
        var names = roster.InOrder.Select(d => d.Tag).Concat(nodes.InOrder.Select(n => n.Text));
        var remedy = isNode
            ? null
            : findings.DidYouMean(meant.Text, names)
                ?? $"declare {meant}, or name the node where it is first met: node {meant}";
        findings.Add(Complaint.UnknownName.At(meant.Span, message, meant.Text, remedy));
        return new Unreadable(reference);
    }

    /// <summary>The word that was probably meant as the tag.</summary>
    private WordSyntax TagAmong(RefSyntax reference)
    {
        var beforePositions = reference.Words.TakeWhile((w, i) => i == 0 || w.Text != "at").ToList();
        return beforePositions.Find(w => w.LooksLikeTag && !partWords.Contains(w.Text))
            ?? beforePositions.Find(w => !partWords.Contains(w.Text))
            ?? reference.Words[^1];
    }
}
