using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>
/// A voltage that comes through loads is divided in a way that nobody knows: whether it lies in a band is never sure. A
/// settling move that asks for that with certainty is optional instead.
/// </summary>
internal static class SureMove
{
    public static Move Of(Move move) =>
        move.By == Mover.Settle && AsksForBand(move.When, positive: true)
            ? move with
            {
                When = Expression.False,
                May = Expression.AnyOf(move.When, move.May),
            }
            : move;

    private static bool AsksForBand(Expression condition, bool positive) =>
        condition switch
        {
            Energised { Grade: Grade.Loose } e => positive && (e.Low > 0 || e.High is not null),
            Not n => AsksForBand(n.Term, !positive),
            All a => a.Terms.Any(t => AsksForBand(t, positive)),
            Any a => a.Terms.Any(t => AsksForBand(t, positive)),
            _ => false,
        };
}
