using System.Globalization;
using System.Text;
using CsCheck;

namespace Coldpath.Tests.Sheets.Drawings.Control;

/// <summary>
/// Control circuits at random, as text: series–parallel trees, nodes that end rungs and begin others in any order or
/// stand within branches, groups at both ends, rungs from terminals to terminals, between rails of two supplies, back to
/// where they began, to the earth; wire lists that join nodes, untraced terminals, parts that nothing is wired to.
/// </summary>
internal static class RandomRungs
{
    private const string Devices = """
        supply               MAINS 400/230 V, available 6 kA
        disconnect           Q1    25 A, lockable, in "panel"
        fuse                 F1    three-pole 20 A class gG
        contactor            K1 and K2 18 A AC-3, coil 230 V
        overload relay       F2    class 10, range 8 A to 12 A, set 11 A
        motor                M1    5.5 kW 400 V, 11 A
        mechanical interlock MI1   between K1 and K2
        control transformer  T1    400 V to 230 V, 160 VA, X2 earthed
        control supply       G2    24 V DC
        fuse                 F12   2 A
        safety relay         K5    230 V
        relay                K3 and K4 coil 230 V
        on-delay timer       K6    10 s, coil 230 V
        selector             S1    HAND | OFF | AUTO
        push button          S2    "start the conveyor in the far hall"
        push button          S3    stop
        level contact        B1    closes on high water
        lamp                 P1 and P2 red "running"
        terminal strip       X1

        MAINS[L1, L2, L3] -> Q1 -> F1 -> K1 -> F2 -> M1
        F1 -> K2 -> F2[5/L3, 3/L2, 1/L1]
        F1[L1, L2] -> T1[H1, H4]
        T1:X1 -> F12 -> rail 1
        T1:X2 -> rail 2
        G2:L+ -> rail 3
        G2:L- -> rail 4

        """;

    public static Gen<string> Texts =>
        from head in RandomPanels.Heads
        from circuit in Circuits
        select head + circuit;

    /// <summary>Devices and chains alone.</summary>
    public static Gen<string> Circuits =>
        from rungs in Rung.List[1, 9]
        from wires in Wire.List[0, 4]
        from untraced in Gen.Const("untraced X1:@ because \"far hall\"").List[0, 1]
        select Devices + Lines(rungs, wires, untraced);

    private static string Lines(List<string> rungs, List<string> wires, List<string> untraced)
    {
        var text = new StringBuilder();
        var pins = 0;
        var coils = 0;
        for (var i = 0; i < rungs.Count; i++)
            text.AppendLine(CultureInfo.InvariantCulture, $"rung {i + 1} {Filled(rungs[i])}");
        for (var i = 0; i < wires.Count; i++)
            text.AppendLine(CultureInfo.InvariantCulture, $"wire {200 + i}: {Filled(wires[i])}");
        foreach (var line in untraced)
            text.AppendLine(Filled(line));
        return text.ToString();

        // A strip's terminal seldom twice, each lamp and coil as often as it comes.
        string Filled(string line)
        {
            while (line.Contains('@', StringComparison.Ordinal))
                line = Replaced(line, "@", (++pins % 17).ToString(CultureInfo.InvariantCulture));
            while (line.Contains('%', StringComparison.Ordinal))
                line = Replaced(line, "%", ((coils++ % 4) + 1).ToString(CultureInfo.InvariantCulture));
            return line;
        }
    }

    private static string Replaced(string line, string sign, string by)
    {
        var at = line.IndexOf(sign, StringComparison.Ordinal);
        return line[..at] + by + line[(at + 1)..];
    }

    private static readonly Gen<string> Node = Of("node 100", "node 101", "node 102");

    private static readonly Gen<string> Start = Gen.Frequency(
        (6, Gen.Const("1")),
        (2, Of("3", "2", "4")),
        (5, Node),
        (1, Of("K5:S11", "Q1[L1]", "X1:@", "PE")),
        (1, Of("( 1 -> S2 | 3 -> B1 )", "( 1 -> NO K3 | 1 -> S3 )", "( node 100 -> NO K4 | X1:@ -> S2 )"))
    );

    private static readonly Gen<string> End = Gen.Frequency(
        (6, Gen.Const("coil K% -> 2")),
        (2, Gen.Const("P1 -> 2")),
        (1, Gen.Const("coil K4 -> F2:95-96 -> 2")),
        (1, Gen.Const("( coil K3 -> 2 | P2 -> 2 )")),
        (
            1,
            Of("( coil K% -> PE | P1 -> 4 )", "( S2 -> node 101 | B1 -> PE )", "( NO K3 -> X1:@ | P2 -> 2 )")
        ),
        (1, Of("P2 -> 4", "coil K% -> 4")),
        (1, Of("2", "1", "3")),
        (4, Node),
        (1, Of("K5:S12", "MAINS[N]", "X1:@", "PE"))
    );

    private static readonly Gen<string> Leaf = Gen.Frequency(
        (6, Of("NO K1", "NC K2", "NO K3", "NC K4", "NO K6", "NO F2", "NC K5")),
        (3, Of("S2", "S3", "B1", "S1 at HAND", "S1 at HAND or AUTO")),
        (2, Gen.Const("X1:@")),
        (1, Of("node 103", "node 104", "node 100", "coil K%", "F2:97-98", "PE"))
    );

    private static Gen<string> Rung =>
        Gen.Frequency(
            (
                15,
                from start in Start
                from body in Tree(5)
                from end in End
                select $"{start} -> {body} -> {end}"
            ),
            (
                1,
                from ends in Of("node 104", "node 100", "1", "X1:@")
                from body in Tree(3)
                select $"{ends} -> {body} -> {ends}"
            ),
            (
                1,
                from start in Of("1", "node 101", "X1:@", "PE")
                from end in Of("node 102", "2", "X1:@")
                select $"{start} -> {end}"
            )
        );

    private static readonly Gen<string> Wire = Of(
        "X1:@, X1:@",
        "X1:@, P2:X1",
        "K6:A1, X1:@, X1:@",
        "S2:14, X1:@",
        "K4:A2, G2:L-",
        "node 100, node 101",
        "node 102, node 103, X1:@",
        "node 104, PE",
        "X1:@, PE",
        "3, X1:@"
    );

    private static Gen<string> Of(params string[] texts) => Gen.OneOf([.. texts.Select(Gen.Const)]);

    private static Gen<string> Tree(int depth) =>
        depth == 0
            ? Leaf
            : Gen.Frequency(
                (3, Leaf),
                (2, Tree(depth - 1).List[1, 4].Select(l => string.Join(" -> ", l))),
                (2, Tree(depth - 1).List[2, 3].Select(l => $"( {string.Join(" | ", l)} )"))
            );
}
