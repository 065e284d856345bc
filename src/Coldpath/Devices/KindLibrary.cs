using System.Collections.Concurrent;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices;

/// <summary>The kinds that a panel may use: the standard ones, read when they are first asked for, and its own.</summary>
public sealed class KindLibrary
{
    private readonly IKindTexts texts;
    private readonly Dictionary<string, KindSyntax> own;
    private readonly ConcurrentDictionary<string, KindSyntax?> read;

    /// <summary>The kinds that ship with the program.</summary>
    public static readonly KindLibrary Standard = new(new StandardKinds());

    internal KindLibrary(IKindTexts texts)
        : this(texts, [], new(StringComparer.Ordinal)) { }

    private KindLibrary(
        IKindTexts texts,
        Dictionary<string, KindSyntax> own,
        ConcurrentDictionary<string, KindSyntax?> read
    )
    {
        this.texts = texts;
        this.own = own;
        this.read = read;
    }

    /// <summary>All names, in ordinal order.</summary>
    public IReadOnlyList<string> Names => [.. texts.Names.Concat(own.Keys).Order(StringComparer.Ordinal)];

    /// <summary>A kind by its words with single spaces; null when there is none.</summary>
    public KindSyntax? Find(string name) =>
        own.TryGetValue(name, out var kind) ? kind : read.GetOrAdd(name, Read);

    /// <summary>The text of a kind as written; null when there is none.</summary>
    public string? TextOf(string name) =>
        own.TryGetValue(name, out var kind) ? kind.Span.Text : texts.Of(name)?.Text;

    /// <summary>This library with the kinds of a panel. A name that is taken already is a finding, and the first holds.</summary>
    public (KindLibrary Library, IReadOnlyList<Finding> Findings) With(IEnumerable<KindSyntax> kinds)
    {
        var all = new Dictionary<string, KindSyntax>(own, StringComparer.Ordinal);
        var findings = new List<Finding>();
        foreach (var kind in kinds)
            if (all.ContainsKey(kind.KindName) || texts.Names.Contains(kind.KindName))
                findings.Add(Taken(kind));
            else
                all.Add(kind.KindName, kind);
        return (new KindLibrary(texts, all, read), findings);
    }

    private KindSyntax? Read(string name) =>
        texts.Of(name) is { } source
            ? PanelParser.Parse(source).Panel.Statements.OfType<KindSyntax>().FirstOrDefault()
            : null;

    private static Finding Taken(KindSyntax kind) =>
        new()
        {
            Code = "K014",
            Name = "kind-name-taken",
            Severity = Severity.Defect,
            Message = $"there is a kind '{kind.KindName}' already",
            Location = kind.Name[0].Span.Through(kind.Name[^1].Span),
            Remedy = "give it another name",
        };
}
