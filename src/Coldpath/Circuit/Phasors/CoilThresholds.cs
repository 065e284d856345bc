using Coldpath.Wiring;

namespace Coldpath.Circuit.Phasors;

/// <summary>What the voltage across a coil decides, or leaves open.</summary>
internal enum Ruling
{
    /// <summary>At no voltage that it may be does the move come.</summary>
    Never,

    /// <summary>At every voltage that it may be it comes.</summary>
    Always,

    /// <summary>It may come or not.</summary>
    Open,
}

/// <summary>The voltages at which an armature moves, as the conditions of its moves give them.</summary>
/// <param name="A">The net at one side of the coil.</param>
/// <param name="B">The net at its other side.</param>
/// <param name="Pulls">To pull in, else to drop out.</param>
/// <param name="MustLow">From here it pulls in and holds.</param>
/// <param name="MustHigh">Up to here that is sure.</param>
/// <param name="MayLow">Below here it does not pull in, or drops out.</param>
internal sealed record CoilThresholds(
    string A,
    string B,
    bool Pulls,
    double MustLow,
    double MustHigh,
    double MayLow
)
{
    /// <summary>Null for a move that more than the voltage across a rated coil decides.</summary>
    public static CoilThresholds? Of(Variable variable, Move move)
    {
        var (must, may, pulls) = move switch
        {
            { When: Energised when, May: Energised then } => (when, then, true),
            { When: Not { Term: Energised then }, May: Not { Term: Energised when } } => (when, then, false),
            _ => (null, null, false),
        };
        return
            variable.Kind == VariableKind.Armature
            && must is { Grade: Grade.Solid, Low: > 0, High: { } high }
            && may is { Grade: Grade.Loose, Low: > 0 }
            && (must.A, must.B) == (may.A, may.B)
            ? new(must.A, must.B, pulls, must.Low, high, may.Low)
            : null;
    }

    /// <summary>The coil's rated voltage: its band goes up to 110 % of it.</summary>
    public double Rated => MustHigh / 1.10;

    public Ruling Rule(CoilVoltage volts)
    {
        var sure = volts.Low >= MustLow && volts.High <= MustHigh;
        var none = volts.High < MayLow;
        return !volts.IsKnown || !sure && !none ? Ruling.Open
            : sure == Pulls ? Ruling.Always
            : Ruling.Never;
    }
}
