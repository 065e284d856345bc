using Antlr4.Runtime;

namespace Coldpath.Notation;

/// <summary>Lets the lexer use one token over and over: what it says is copied at once.</summary>
internal sealed class OneToken : ITokenFactory
{
    private readonly CommonToken token = new(TokenConstants.InvalidType);

    public IToken Create(
        Tuple<ITokenSource, ICharStream> source,
        int type,
        string text,
        int channel,
        int start,
        int stop,
        int line,
        int charPositionInLine
    )
    {
        (token.Type, token.StartIndex, token.StopIndex) = (type, start, stop);
        return token;
    }

    public IToken Create(int type, string text) => throw new NotSupportedException("no token is made up");
}
