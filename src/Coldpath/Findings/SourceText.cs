namespace Coldpath.Findings;

/// <summary>A description as read, with its name for messages. Lines and columns count from 1, in UTF-16 units.</summary>
public sealed class SourceText
{
    private readonly int[] lineStarts;

    public SourceText(string name, string text)
    {
        Name = name;
        Text = text;
        var starts = new List<int> { 0 };
        for (var i = 0; i < text.Length; i++)
            if (text[i] == '\n')
                starts.Add(i + 1);
        lineStarts = [.. starts];
    }

    public string Name { get; }
    public string Text { get; }

    /// <summary>Reads a file that this one includes, its name relative to this one's.</summary>
    public Func<string, IncludedText> Beside { get; init; } =
        _ => new(null, "a description given by itself has no files beside it");
    public int LineCount => lineStarts.Length;

    /// <summary>Line and column of an offset; offsets past the end fall on the end.</summary>
    public (int Line, int Column) Position(int offset)
    {
        offset = Math.Clamp(offset, 0, Text.Length);
        var found = Array.BinarySearch(lineStarts, offset);
        var line = found >= 0 ? found : ~found - 1;
        return (line + 1, offset - lineStarts[line] + 1);
    }

    /// <summary>Offset of a line and column, both from 1.</summary>
    public int Offset(int line, int column) => Math.Min(lineStarts[line - 1] + column - 1, Text.Length);

    /// <summary>The text of a line (from 1) without its line end.</summary>
    public string Line(int line)
    {
        var start = lineStarts[line - 1];
        var end = line < lineStarts.Length ? lineStarts[line] : Text.Length;
        return Text[start..end].TrimEnd('\r', '\n');
    }
}

/// <summary>What came of reading an included file: its text, or what stood in the way, as a clause.</summary>
public sealed record IncludedText(SourceText? Source, string? Problem = null);

/// <summary>A stretch of a source, <see cref="Start"/> inclusive, <see cref="End"/> exclusive, as offsets.</summary>
public readonly record struct Span(SourceText Source, int Start, int End)
{
    public (int Line, int Column) From => Source.Position(Start);
    public (int Line, int Column) To => Source.Position(End);
    public string Text => Source.Text[Start..Math.Min(End, Source.Text.Length)];

    /// <summary>The smallest span that holds both; both must lie in one source.</summary>
    public Span Through(Span other) => new(Source, Math.Min(Start, other.Start), Math.Max(End, other.End));
}
