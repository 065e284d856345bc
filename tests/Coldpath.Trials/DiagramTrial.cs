using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using Coldpath.Circuit.Diagrams;

namespace Coldpath.Trials;

/// <summary>Our diagrams beside Debian's BuDDy on the same functions, built by the same operations.</summary>
internal static class DiagramTrial
{
    private sealed record Case(string Name, int Variables, int Times, Func<DiagramTable, Diagram> Build);

    private static readonly Case[] Cases =
    [
        new("queens8", 64, 20, table => Queens(table, 8)),
        new("queens9", 81, 3, table => Queens(table, 9)),
        new("queens10", 100, 2, table => Queens(table, 10)),
        new("grid5x6", 49, 15, table => Grid(table, 5, 6)),
        new("grid3x40", 197, 15, table => Grid(table, 3, 40)),
    ];

    public static void Run()
    {
        var buddy = Buddy.Run();
        Console.WriteLine(
            "case          ms      BuDDy ms  ratio  nodes (BuDDy)      made        assignments"
        );
        foreach (var trial in Cases)
        {
            var best = double.MaxValue;
            var (table, result) = (new DiagramTable(), Diagram.False);
            for (var i = 0; i < trial.Times; i++)
            {
                table = new DiagramTable();
                var start = Stopwatch.GetTimestamp();
                result = trial.Build(table);
                best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }
            var count = table.Count(result, [.. Enumerable.Range(0, trial.Variables)]);
            var other = buddy.GetValueOrDefault(trial.Name);
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{trial.Name, -10} {best, 8:0.00} {other?.Milliseconds, 10:0.00} {best / other?.Milliseconds, 6:0.00}  {table.NodeCount(result), 7} ({other?.Nodes}) {table.NodesMade, 12} {Power(count), 14}"
                )
            );
        }
    }

    private static string Power(BigInteger count) =>
        count < 1_000_000
            ? count.ToString(CultureInfo.InvariantCulture)
            : $"2^{BigInteger.Log(count, 2).ToString("0.0000", CultureInfo.InvariantCulture)}";

    private static Diagram Queens(DiagramTable table, int n)
    {
        var board = Diagram.True;
        for (var i = 0; i < n; i++)
        {
            var row = Diagram.False;
            for (var j = 0; j < n; j++)
                row = table.Or(row, table.Variable(i * n + j));
            board = table.And(board, row);
        }
        for (var i = 0; i < n; i++)
        for (var j = 0; j < n; j++)
        {
            var (alone, here) = (Diagram.True, table.Variable(i * n + j));
            for (var k = 0; k < n; k++)
            for (var l = 0; l < n; l++)
            {
                var attacks = k == i || l == j || k - i == l - j || k - i == j - l;
                if ((k != i || l != j) && attacks)
                    alone = table.And(alone, table.Implies(here, table.Literal(k * n + l, false)));
            }
            board = table.And(board, alone);
        }
        return board;
    }

    /// <summary>Corner to opposite corner of a grid of switches, by node elimination column by column.</summary>
    private static Diagram Grid(DiagramTable table, int rows, int columns)
    {
        var nodes = rows * columns;
        var conducts = new Diagram[nodes, nodes];
        for (var a = 0; a < nodes; a++)
        for (var b = 0; b < nodes; b++)
            conducts[a, b] = Diagram.False;
        var next = 0;
        for (var c = 0; c < columns; c++)
        for (var r = 0; r < rows; r++)
        {
            var a = c * rows + r;
            if (r + 1 < rows)
                conducts[a, a + 1] = conducts[a + 1, a] = table.Variable(next++);
            if (c + 1 < columns)
                conducts[a, a + rows] = conducts[a + rows, a] = table.Variable(next++);
        }
        for (var x = 1; x + 1 < nodes; x++)
        for (var a = 0; a < nodes; a++)
        for (var b = a + 1; b < nodes; b++)
        {
            var (left, right) = (conducts[a, x], conducts[x, b]);
            if ((a > 0 && a <= x) || b <= x || left.IsFalse || right.IsFalse)
                continue;
            conducts[a, b] = table.Or(conducts[a, b], table.And(left, right));
            conducts[b, a] = conducts[a, b];
        }
        return conducts[0, nodes - 1];
    }
}
