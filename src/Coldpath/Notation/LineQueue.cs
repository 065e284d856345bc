using Coldpath.Findings;

namespace Coldpath.Notation;

/// <summary>The lines of a file, taken one after another.</summary>
internal sealed class LineQueue(Reading reading, IEnumerable<Line> cut)
{
    private readonly List<Line> lines = [.. cut];
    private int next;

    public bool AtEnd => next == lines.Count;

    public Line Peek => lines[next];

    public Line Take() => lines[next++];

    public bool Begins(Line line, string word) => reading.Text(line.Lexemes[0]) == word;

    /// <summary>Whether the next line is this word and nothing more.</summary>
    public bool NextIs(string word) => Peek.Lexemes.Count == 1 && Begins(Peek, word);

    /// <summary>Column of a line's first character, from 1.</summary>
    public int Column(Line line) => reading.Source.Position(line.Start).Column;

    /// <summary>From a line taken before to the end of the last one taken.</summary>
    public Span SpanFrom(Line line) => reading.Span(line.Start, lines[next - 1].End);
}
