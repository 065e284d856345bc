using Coldpath.Findings;

namespace Coldpath.Notation;

/// <summary>The lines of a file, taken one after another.</summary>
internal sealed class LineQueue : IDisposable
{
    private readonly Reading reading;
    private readonly IEnumerator<Line> cut;
    private int lastEnd;

    public LineQueue(Reading reading, IEnumerable<Line> cut)
    {
        this.reading = reading;
        this.cut = cut.GetEnumerator();
        AtEnd = !this.cut.MoveNext();
    }

    public bool AtEnd { get; private set; }

    public Line Peek => cut.Current;

    public Line Take()
    {
        var line = cut.Current;
        lastEnd = line.End;
        AtEnd = !cut.MoveNext();
        return line;
    }

    public bool Begins(Line line, string word) => reading.Text(line.Lexemes[0]) == word;

    /// <summary>Whether the next line is this word and nothing more.</summary>
    public bool NextIs(string word) => Peek.Lexemes.Count == 1 && Begins(Peek, word);

    /// <summary>Column of a line's first character, from 1.</summary>
    public int Column(Line line) => reading.Source.Position(line.Start).Column;

    /// <summary>From a line taken before to the end of the last one taken.</summary>
    public Span SpanFrom(Line line) => reading.Span(line.Start, lastEnd);

    public void Dispose() => cut.Dispose();
}
