using Coldpath.Wiring;

namespace Coldpath.Circuit.Conduction;

/// <summary>Three conductors in an order.</summary>
internal readonly record struct Three(Source First, Source Second, Source Third);

/// <summary>The triangle that the voltages of three conductors make.</summary>
internal static class Phases
{
    /// <summary>How far the smallest of three equal voltages may lie below the largest, as a part of it.</summary>
    private const double Agreement = 0.10;

    /// <summary>All ordered threes of a supply's conductors whose mutual voltages agree within 10 %.</summary>
    public static IEnumerable<Three> Threes(IReadOnlyList<Source> supply) =>
        from first in supply
        from second in supply
        where second != first
        from third in supply
        where third != first && third != second
        let three = new Three(first, second, third)
        where Agree(three)
        select three;

    /// <summary>Forward when each conductor's voltage lags the one before.</summary>
    public static PhaseOrder Order(Three three)
    {
        var one = three.Second.Volts - three.First.Volts;
        var other = three.Third.Volts - three.First.Volts;
        return one.Real * other.Imaginary - one.Imaginary * other.Real < 0
            ? PhaseOrder.Forward
            : PhaseOrder.Reverse;
    }

    private static bool Agree(Three three)
    {
        double[] sides =
        [
            three.First.Between(three.Second),
            three.Second.Between(three.Third),
            three.Third.Between(three.First),
        ];
        var (most, least) = (sides.Max(), sides.Min());
        return !three.First.SameVoltage(three.Second) && most - least <= Agreement * most * (1 + 1e-9);
    }
}
