using System.Numerics;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>Which conductors are there, and what they come to.</summary>
internal sealed partial class PlainNetwork
{
    private IEnumerable<(Supply, SupplyConductor)> SourcesOn() =>
        from supply in AllSupplies
        where netlist.Supplies.Contains(supply) || activeOutputs.Contains(supply.Name)
        where Holds(supply.Present)
        from conductor in supply.Conductors
        where Holds(conductor.Present)
        select (supply, conductor);

    private static Complex Volts(SupplyConductor c) =>
        c.Polarity == Polarity.Minus
            ? -Math.Abs(c.Volts)
            : Complex.FromPolarCoordinates(c.Volts, c.Degrees * Math.PI / 180);

    /// <summary>Without passing diodes, but at grade loose.</summary>
    private bool Comes(SupplyConductor conductor, string net, Grade grade) =>
        ReachedFrom(conductor.Net, grade, null).Contains(net);

    private static double Between(SupplyConductor a, SupplyConductor b) => (Volts(a) - Volts(b)).Magnitude;

    private static bool Differ(SupplyConductor a, SupplyConductor b) => Between(a, b) > 1e-6;

    public bool Energised(string a, string b, Grade grade, double low, double high) =>
        !Joined(a, b)
        && (
            from one in Lasting
            from other in Lasting
            where one.Supply == other.Supply && Differ(one.Conductor, other.Conductor)
            let volts = Between(one.Conductor, other.Conductor)
            where volts > low - 1e-6 && volts < high + 1e-6
            where Reaches(one.Conductor, a, grade) && Reaches(other.Conductor, b, grade)
            select volts
        ).Any();

    private static bool Agree(params double[] sides) =>
        sides.Min() > 1e-6 && sides.Max() - sides.Min() <= 0.1 * sides.Max();

    private static bool Triangle(SupplyConductor a, SupplyConductor b, SupplyConductor c) =>
        Agree(Between(a, b), Between(b, c), Between(c, a));

    /// <summary>Forward: the second lags the first, as L2 lags L1.</summary>
    private static bool Forward(SupplyConductor a, SupplyConductor b, SupplyConductor c)
    {
        var centre = (Volts(a) + Volts(b) + Volts(c)) / 3;
        return ((Volts(b) - centre) / (Volts(a) - centre)).Phase < 0;
    }

    public bool Fed(Fed fed) =>
        !Joined(fed.A, fed.B)
        && !Joined(fed.B, fed.C)
        && !Joined(fed.A, fed.C)
        && (
            from a in Lasting
            from b in Lasting
            from c in Lasting
            where a.Supply == b.Supply && b.Supply == c.Supply
            let three = (A: a.Conductor, B: b.Conductor, C: c.Conductor)
            where Triangle(three.A, three.B, three.C)
            where
                fed.Order == PhaseOrder.Any
                || (fed.Order == PhaseOrder.Forward) == Forward(three.A, three.B, three.C)
            where
                Comes(three.A, fed.A, fed.Grade)
                && Comes(three.B, fed.B, fed.Grade)
                && Comes(three.C, fed.C, fed.Grade)
            select three
        ).Any();

    public bool Single(IReadOnlyList<string> nets) =>
        Lasting
            .Where(s => nets.Any(net => Comes(s.Conductor, net, Grade.Load)))
            .GroupBy(s => s.Supply)
            .Any(supply => supply.Select(s => Rounded(Volts(s.Conductor))).Distinct().Count() == 2);

    private static (double, double) Rounded(Complex volts) =>
        (Math.Round(volts.Real, 6) + 0.0, Math.Round(volts.Imaginary, 6) + 0.0);
}
