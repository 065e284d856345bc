using System.Text.RegularExpressions;
using Coldpath.Devices;
using Coldpath.Findings;

namespace Coldpath.Tests.Devices;

/// <summary>A copy of the standard library in which every kind is called "renamed …".</summary>
internal sealed partial class RenamedKinds : IKindTexts
{
    public const string Word = "renamed ";

    public IReadOnlyCollection<string> Names { get; } = [.. KindLibrary.Standard.Names.Select(n => Word + n)];

    public SourceText? Of(string name) =>
        name.StartsWith(Word, StringComparison.Ordinal)
        && KindLibrary.Standard.TextOf(name[Word.Length..]) is { } text
            ? new SourceText(name, Name().Replace(text, $"$1{Word}$2"))
            : null;

    [GeneratedRegex(@"^(\s*(?:kind|like)\s+)(.+)$", RegexOptions.Multiline)]
    private static partial Regex Name();
}
