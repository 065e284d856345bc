using Coldpath.Notation.Syntax;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>
/// The positions of a switch and what lies between neighbours: with contacts that break before they make, a value
/// "A>B" in which neither is made, entered by the operator and left by itself.
/// </summary>
internal static class PositionValues
{
    private const string RestRating = "rest";
    private static readonly string[] RestNames = ["OFF", "STOP", "0"];

    public static IReadOnlyList<string> Positions(PositionsSyntax line, KindContext context) =>
        context.Ratings[string.Join(' ', line.Of)]?.Words ?? [];

    public static IReadOnlyList<string> Of(PositionsSyntax line, KindContext context)
    {
        var positions = Positions(line, context);
        return line.MakeBeforeBreak ? positions : [.. positions, .. Turns(positions).Select(t => t.Between)];
    }

    public static IReadOnlyList<Move> Moves(PositionsSyntax line, KindContext context)
    {
        var moves = new List<Move>();
        foreach (var turn in Turns(Positions(line, context)))
            if (line.MakeBeforeBreak)
                moves.Add(Always(turn.From, turn.To, Mover.Operator));
            else
            {
                moves.Add(Always(turn.From, turn.Between, Mover.Operator));
                moves.Add(Always(turn.Between, turn.To, Mover.Settle));
            }
        return moves;
    }

    /// <summary>OFF, STOP or 0; else the declared one; else the first, which is then said.</summary>
    public static string Rest(PositionsSyntax line, KindContext context)
    {
        var positions = Positions(line, context);
        if (positions.FirstOrDefault(RestNames.Contains) is { } off)
            return off;
        if (context.Ratings[RestRating]?.Text is { } declared && positions.Contains(declared))
            return declared;
        context.Assumed.Add($"at rest it is taken to stand at {positions[0]}: no position is OFF, STOP or 0");
        return positions[0];
    }

    private static IEnumerable<Turn> Turns(IReadOnlyList<string> positions)
    {
        for (var i = 1; i < positions.Count; i++)
        {
            yield return new Turn(positions[i - 1], positions[i]);
            yield return new Turn(positions[i], positions[i - 1]);
        }
    }

    private static Move Always(string from, string to, Mover by) =>
        new(from, to, by, Expression.True, Expression.False);

    /// <summary>From one position to its neighbour.</summary>
    private sealed record Turn(string From, string To)
    {
        public string Between => $"{From}>{To}";
    }
}
