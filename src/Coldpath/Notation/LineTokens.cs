using Antlr4.Runtime;
using Antlr4.Runtime.Misc;

namespace Coldpath.Notation;

/// <summary>The lexemes of one line as the grammar's tokens. One object serves all lines, and so do its tokens.</summary>
internal sealed class LineTokens(Reading reading) : ITokenStream
{
    private readonly List<CommonToken> tokens = [];
    private int count;

    public int Index { get; private set; }
    public int Size => count;
    public string SourceName => reading.Source.Name;
    public ITokenSource TokenSource { get; } = new ListTokenSource([]);

    /// <summary>Starts on another line.</summary>
    public void Show(Lexemes lexemes)
    {
        (count, Index) = (0, 0);
        for (var i = 0; i < lexemes.Count; i++)
            Add(lexemes[i].Type, lexemes[i].Start, lexemes[i].End);
        var end = lexemes.Count == 0 ? 0 : lexemes[^1].End;
        Add(TokenConstants.EOF, end, end);
    }

    public IToken Get(int i) => tokens[i];

    public IToken LT(int k) => tokens[Math.Clamp(k > 0 ? Index + k - 1 : Index + k, 0, count - 1)];

    public int LA(int i) => LT(i).Type;

    public void Consume() => Index++;

    public void Seek(int index) => Index = index;

    public int Mark() => 0;

    public void Release(int marker) { }

    public string GetText(IToken start, IToken stop) => reading.Text(start.StartIndex, stop.StopIndex + 1);

    public string GetText(Interval interval) => GetText(tokens[interval.a], tokens[interval.b]);

    public string GetText(RuleContext ctx) => GetText(ctx.SourceInterval);

    public string GetText() => GetText(tokens[0], tokens[count - 1]);

    private void Add(int type, int start, int end)
    {
        if (count == tokens.Count)
            tokens.Add(new CommonToken(type) { TokenIndex = count });
        var token = tokens[count++];
        (token.Type, token.StartIndex, token.StopIndex) = (type, start, end - 1);
    }
}
