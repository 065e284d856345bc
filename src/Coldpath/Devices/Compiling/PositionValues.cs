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
        return line.MakeBeforeBreak
            ? positions
            : [.. positions, .. Neighbours(positions).Select(n => Between(n.From, n.To))];
    }

    public static IReadOnlyList<Move> Moves(PositionsSyntax line, KindContext context) =>
        [
            .. Neighbours(Positions(line, context))
                .SelectMany(n =>
                    line.MakeBeforeBreak
                        ? [Always(n.From, n.To, Mover.Operator)]
                        : new[]
                        {
                            Always(n.From, Between(n.From, n.To), Mover.Operator),
                            Always(Between(n.From, n.To), n.To, Mover.Settle),
                        }
                ),
        ];

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

    private static string Between(string from, string to) => $"{from}>{to}";

    private static IEnumerable<(string From, string To)> Neighbours(IReadOnlyList<string> positions) =>
        Enumerable
            .Range(0, Math.Max(0, positions.Count - 1))
            .SelectMany(i => new[] { (positions[i], positions[i + 1]), (positions[i + 1], positions[i]) });

    private static Move Always(string from, string to, Mover by) =>
        new(from, to, by, Expression.True, Expression.False);
}
