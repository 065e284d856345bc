using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Notation;

/// <summary>One source while it is read: makes spans, and one string for all equal words.</summary>
internal sealed class Reading(SourceText source)
{
    private readonly WordPool words = new();

    public SourceText Source => source;

    public Span Span(int start, int end) => new(source, start, end);

    public Span Span(Lexeme lexeme) => Span(lexeme.Start, lexeme.End);

    public string Text(int start, int end) => words.Get(source.Text.AsSpan(start, end - start));

    public string Text(Lexeme lexeme) => Text(lexeme.Start, lexeme.End);

    public WordSyntax Word(Lexeme lexeme) => new(Text(lexeme), Span(lexeme));

    public WordSyntax[] Words(Lexemes lexemes)
    {
        var made = new List<WordSyntax>();
        for (var i = 0; i < lexemes.Count; i++)
            if (lexemes[i].IsWord)
                made.Add(Word(lexemes[i]));
        return [.. made];
    }
}
