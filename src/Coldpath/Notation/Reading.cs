using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Notation;

/// <summary>One source while it is read: makes spans, and one string for all equal words.</summary>
internal sealed class Reading(SourceText source)
{
    private readonly HashSet<string> words = new(StringComparer.Ordinal);

    public SourceText Source => source;

    public Span Span(int start, int end) => new(source, start, end);

    public Span Span(Lexeme lexeme) => Span(lexeme.Start, lexeme.End);

    public string Text(int start, int end)
    {
        var text = source.Text.AsSpan(start, end - start);
        var lookup = words.GetAlternateLookup<ReadOnlySpan<char>>();
        if (lookup.TryGetValue(text, out var known))
            return known;
        var word = text.ToString();
        words.Add(word);
        return word;
    }

    public string Text(Lexeme lexeme) => Text(lexeme.Start, lexeme.End);

    public WordSyntax Word(Lexeme lexeme) => new(Text(lexeme), Span(lexeme));
}
