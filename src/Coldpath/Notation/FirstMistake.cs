using Antlr4.Runtime;
using Antlr4.Runtime.Atn;
using Antlr4.Runtime.Misc;

namespace Coldpath.Notation;

/// <summary>Gives up at the first mistake, and remembers all that could have stood there.</summary>
internal sealed class FirstMistake : DefaultErrorStrategy
{
    private readonly List<int> states = [];
    private int at = -1;

    /// <summary>Forgets the line before.</summary>
    public override void Reset(Parser recognizer)
    {
        base.Reset(recognizer);
        at = -1;
        states.Clear();
    }

    public override void Sync(Parser recognizer)
    {
        var index = recognizer.CurrentToken.TokenIndex;
        if (index != at)
            states.Clear();
        at = index;
        states.Add(recognizer.State);
    }

    public override void ReportError(Parser recognizer, RecognitionException e) { }

    public override void Recover(Parser recognizer, RecognitionException e) =>
        throw new ParseCanceledException(e);

    public override IToken RecoverInline(Parser recognizer) =>
        throw new ParseCanceledException(new InputMismatchException(recognizer));

    /// <summary>The tokens that could have stood where the mistake is.</summary>
    public IntervalSet Expected(Parser recognizer, RecognitionException e)
    {
        var expected = new IntervalSet();
        expected.AddAll(recognizer.Atn.NextTokens(recognizer.Atn.states[e.OffendingState]));
        if (e.OffendingToken.TokenIndex == at)
            foreach (var state in states)
                expected.AddAll(recognizer.Atn.NextTokens(recognizer.Atn.states[state]));
        expected.Remove(TokenConstants.EPSILON);
        return expected;
    }
}
