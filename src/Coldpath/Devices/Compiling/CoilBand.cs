using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>
/// What a coil's voltage does, by IEC 60947-4-1 (8.2.1.2): it pulls and holds from 85 % to 110 % of the rated voltage
/// and has dropped at 20 %, with direct voltage at 10 %. That it may pull begins at 50 %, a lower bound of our own.
/// Without a rated voltage every voltage is in the band.
/// </summary>
internal static class CoilBand
{
    public static Expression MustPull(string a, string b, double? rated) =>
        new Energised(a, b, Grade.Solid, 0.85 * rated ?? 0, 1.10 * rated);

    public static Expression MayPull(string a, string b, double? rated) =>
        new Energised(a, b, Grade.Loose, 0.50 * rated ?? 0, null);

    public static Expression MayHold(string a, string b, double? rated, bool direct) =>
        new Energised(a, b, Grade.Loose, (direct ? 0.10 : 0.20) * rated ?? 0, null);

    /// <summary>The armature's moves: certain where it must, optional where it only may.</summary>
    public static IReadOnlyList<Move> Moves(string a, string b, double? rated, bool direct) =>
        [
            new(Armature.Out, Armature.In, Mover.Settle, MustPull(a, b, rated), MayPull(a, b, rated)),
            new(
                Armature.In,
                Armature.Out,
                Mover.Settle,
                Expression.Negate(MayHold(a, b, rated, direct)),
                Expression.Negate(MustPull(a, b, rated))
            ),
        ];
}

/// <summary>The values of a coil's variable.</summary>
internal static class Armature
{
    public const string Out = "out";
    public const string In = "in";
}
