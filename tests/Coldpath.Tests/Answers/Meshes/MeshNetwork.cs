using System.Globalization;
using System.Text;

namespace Coldpath.Tests.Answers.Meshes;

/// <summary>A mesh of lockable disconnects between numbered bars, fed at one bar, with a load at another.</summary>
/// <param name="Name">As tables print it.</param>
/// <param name="Bars">How many there are.</param>
/// <param name="Switches">The two bars that each joins.</param>
/// <param name="Fed">The bar with the supply.</param>
/// <param name="Load">The bar with the load.</param>
public sealed record MeshNetwork(
    string Name,
    int Bars,
    IReadOnlyList<(int A, int B)> Switches,
    int Fed,
    int Load
)
{
    /// <summary>Bars in rows and columns, a switch between each two neighbours; from corner to opposite corner.</summary>
    public static MeshNetwork Grid(int rows, int columns)
    {
        var across =
            from row in Enumerable.Range(0, rows)
            from column in Enumerable.Range(0, columns - 1)
            select (row * columns + column, row * columns + column + 1);
        var down = from bar in Enumerable.Range(0, (rows - 1) * columns) select (bar, bar + columns);
        var bars = rows * columns;
        return new($"grid {rows} x {columns}", bars, [.. across, .. down], 0, bars - 1);
    }

    /// <summary>Bars in a circle; the load is half way round.</summary>
    public static MeshNetwork Ring(int bars) =>
        new(
            $"ring {bars}",
            bars,
            [.. Enumerable.Range(0, bars).Select(b => (b, (b + 1) % bars))],
            0,
            bars / 2
        );

    /// <summary>Two rails and rungs between them, one at each end.</summary>
    public static MeshNetwork Ladder(int rungs) => Grid(rungs, 2) with { Name = $"ladder {rungs}" };

    /// <summary>A switch between each two bars.</summary>
    public static MeshNetwork Complete(int bars) =>
        new(
            $"complete {bars}",
            bars,
            [
                .. from a in Enumerable.Range(0, bars)
                from b in Enumerable.Range(a + 1, bars - a - 1)
                select (a, b),
            ],
            0,
            bars - 1
        );

    /// <summary>The bridge network of the reliability textbooks.</summary>
    public static MeshNetwork Bridge() => new("bridge", 4, [(0, 1), (0, 2), (1, 2), (1, 3), (2, 3)], 0, 3);

    /// <summary>The same mesh with its switches declared in another order.</summary>
    public MeshNetwork Shuffled(int seed)
    {
        var shuffled = Switches.ToArray();
        new Random(seed).Shuffle(shuffled);
        return this with { Name = Name + " shuffled", Switches = shuffled };
    }

    /// <summary>The mesh as a description: switches Q1, Q2 and so on, three-pole with a motor or one-pole with a lamp.</summary>
    public string Text(bool threePole = true)
    {
        var poles = threePole ? "three-pole" : "one-pole";
        var text = new StringBuilder();
        Line($"panel \"{Name}\"");
        Line($"  rules   IEC");
        Line($"  system  400 V 3-phase 50 Hz, TN-S");
        Line($"");
        Line($"supply MAINS 400/230 V, available 10 kA");
        for (var bar = 0; bar < Bars; bar++)
            Line($"distribution block X{bar} {poles}");
        for (var i = 1; i <= Switches.Count; i++)
            Line($"disconnect Q{i} {poles} 63 A, lockable, visible break");
        Line($"{(threePole ? "motor M1 5.5 kW 400 V, 11 A" : "lamp M1 red \"running\"")}");
        Line($"");
        Line($"MAINS{(threePole ? "[L1, L2, L3]" : "[L1]")} -> X{Fed}");
        for (var i = 0; i < Switches.Count; i++)
            Line($"X{Switches[i].A} -> Q{i + 1} -> X{Switches[i].B}");
        Line($"X{Load} -> M1{(threePole ? "" : " -> MAINS[N]")}");
        return text.ToString();

        void Line(FormattableString line) =>
            text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
    }
}
