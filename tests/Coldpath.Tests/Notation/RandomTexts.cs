using CsCheck;

namespace Coldpath.Tests.Notation;

/// <summary>Random texts without mistakes, made token by token, in random layout and with comments anywhere.</summary>
internal static class RandomTexts
{
    private static readonly Gen<string> Tag = Of(
        "K1",
        "K2",
        "-Q1",
        "=A1+B2-Q1",
        "M1",
        "never",
        "panel",
        "end",
        "X1",
        "Überlast1",
        "S1.2",
        "100",
        "T'1"
    );
    private static readonly Gen<string> RealTag = Tag.Where(t => !char.IsDigit(t[0]));
    private static readonly Gen<string> Word = Of(
        "main",
        "armature",
        "trip",
        "coil",
        "in",
        "closed",
        "NO",
        "weld"
    );
    private static readonly Gen<string> Plain = Of(
        "main",
        "armature",
        "trip",
        "coil",
        "speed",
        "legs",
        "weld"
    );
    private static readonly Gen<string> Terminal = Of(
        "1",
        "1/L1",
        "A1",
        "L+",
        "DC-",
        "95-96",
        "*3",
        "*star",
        "+",
        "-"
    );
    private static readonly Gen<string> Text = Of("\"\"", "\"at the motor\"", "\"a # b -> ( [ c\"");
    private static readonly Gen<string> Number = Of("0", "2", "15", "1.5", "480");
    private static readonly Gen<string> Quantity = Of(
        "480 V",
        "480V",
        "24V DC",
        "480Y/277 V",
        "1/0 AWG",
        "85 %",
        "85%",
        "1.5kW",
        "35 mm2"
    );

    private static readonly Gen<string> Pair = Gen.Select(Terminal, Terminal, (a, b) => $"[ {a}  -  {b} ]");
    private static readonly Gen<string> List = Join(Terminal, " , ", 1, 3).Select(l => $"[ {l} ]");
    private static readonly Gen<string> Narrowing = Gen.OneOf(
        Gen.Const(""),
        Terminal.Where(t => t[0] != '*').Select(t => ":" + t),
        List
    );
    private static readonly Gen<string> Ref = Gen.OneOf(
        Gen.Select(RealTag, Narrowing, (t, n) => t + n),
        Gen.Select(Of("coil", "NO", "NC", "input"), RealTag, Narrowing, (w, t, n) => $"{w} {t}{n}"),
        Of("S1 at HAND or AUTO", "rail L+", "node 100", "100", "NC U1 trip:95-96")
    );

    private static Gen<string> Steps(int depth, int least) =>
        Join(depth == 0 ? Ref : Gen.Frequency((3, Ref), (1, Group(depth - 1))), " -> ", least, 3);

    private static Gen<string> Group(int depth) => Join(Steps(depth, 1), " | ", 1, 3).Select(b => $"( {b} )");

    private static Gen<string> Condition(Gen<string> term, int depth) =>
        Gen.Select(
            Of(" and ", " or "),
            (
                depth == 0
                    ? term
                    : Gen.Frequency((3, term), (1, Condition(term, depth - 1).Select(c => $"( {c} )")))
            )
                .Select(Gen.Bool, (t, not) => not ? "not " + t : t)
                .Array[1, 3],
            string.Join
        );

    private static readonly Gen<string> States = Condition(
        Gen.Select(
            RealTag,
            Narrowing,
            Of("closed", "at HAND", "full speed", "runs forward"),
            (t, n, s) => $"{t}{n} {s}"
        ),
        2
    );

    private static readonly Gen<string> Sum = Gen.OneOf(
        Number,
        Plain,
        Of("24 V", "root 3", "85 % of coil", "- 5", "-120", "(a + b) * c / d - root (3 + e)")
    );

    private static readonly Gen<string> Guards = Condition(
        Gen.OneOf(
            Gen.Select(Plain, Word, (n, v) => $"{n} is {v}"),
            Gen.Select(Of("any", "no"), Plain, (q, n) => $"{q} {n} closed"),
            Gen.Select(Plain, Sum, (n, s) => $"{n} at least {s}"),
            Gen.Select(Pair, Sum, Sum, (p, a, b) => $"loosely energised {p} between {a} and {b}"),
            List.Select(l => $"fed {l} forward"),
            Plain
        ),
        2
    );

    private static readonly Gen<string> Statement = Gen.OneOf(
        Text.Select(t => $"panel {t}"),
        Gen.Const("drawing QD-31 revision B"),
        Gen.Const("system 480V 3-phase 60 Hz , solidly earthed wye"),
        Gen.Select(
            Of("fuse", "control transformer", "level contact"),
            Join(RealTag.Where(t => char.IsUpper(t[0])), " and ", 1, 2),
            Join(
                Gen.OneOf(Quantity, Text, Number, Of("lockable", "HAND | OFF", "in \"door\"", "AC-3")),
                " , ",
                0,
                3
            ),
            (k, t, r) => $"{k} {t} {r}"
        ),
        Steps(2, 2),
        Gen.Select(Number, Steps(2, 2), (n, s) => $"rung {n} {s}"),
        Gen.Select(Tag, Join(Ref, " , ", 1, 3), (t, r) => $"wire {t} : {r}"),
        Gen.Select(Ref, Text, (r, t) => $"untraced {r} because {t}"),
        Join(Ref, " , ", 1, 2).Select(r => $"seen {r}"),
        Join(Ref, " and ", 1, 2).Select(r => $"from the drawing {r}"),
        Gen.Select(States, Of("", ", when settled", ", even with 2 failures"), (c, o) => $"never {c} {o}"),
        States.Select(c => $"dead M1 when {c}"),
        Of("stops M1 by S0", "stops M1 by S0 at once", "can M1 run via K1 and K2", "can end run"),
        Text.Select(t => $"waive way-without-overload on M1 because {t}")
    );

    private static readonly Gen<string> KindLine = Gen.OneOf(
        Text.Select(t => $"means {t}"),
        Of(
            "takes ratio in V to V , needed",
            "takes size of AC-1 | AC-3 , default AC-3",
            "takes poles as number , default 3",
            "flag mirror contacts",
            "like level contact",
            "use stop",
            "bar [L1] [*] , first 2"
        ),
        Sum.Select(s => $"let x = {s}"),
        Gen.Select(Pair, Guards, (p, g) => $"contact main {p} , power , welds , closed when {g}"),
        Gen.Select(Pair, Sum, (p, s) => $"coil {p} at {s} , moves armature"),
        Gen.Select(Pair, Guards, (p, g) => $"family NO {p} , through , closed when {g}"),
        Of(
            "variable x : a | b , cell , rest a",
            "positions switch of positions , make before break",
            "isolates by x through main , rank 2"
        ),
        Guards.Select(g => $"a -> b by settle when {g} , may when {g}"),
        Gen.Select(Word, Guards, (w, g) => $"state {w} when {g}"),
        Gen.Select(List, Pair, Sum, (l, p, s) => $"mode delta feeds {l} , joined {p} {p} , speed {s}")
    );

    private static Gen<string[]> Lines(int depth) =>
        Gen.Frequency(
                (4, KindLine.Select(l => new[] { l })),
                (
                    depth == 0 ? 0 : 1,
                    Gen.Select(
                        Guards,
                        Inner(depth),
                        Inner(depth),
                        (g, a, b) => (string[])[$"if {g}", .. a, "else", .. b, "end"]
                    )
                ),
                (
                    depth == 0 ? 0 : 1,
                    Gen.Select(
                        Pair,
                        Inner(depth),
                        (p, a) => (string[])[$"for each pole {p} , first x", .. a, "end"]
                    )
                ),
                (
                    1,
                    Gen.Select(
                        Terminal,
                        Sum,
                        Guards,
                        (t, s, g) =>
                            new[]
                            {
                                $"source grid , present when {g}",
                                $"conductor [ {t} ] at {s} angle {s} , plus",
                                "end",
                            }
                    )
                )
            )
            .Array[1, 3]
            .Select(l => l.SelectMany(x => x).ToArray());

    private static Gen<string[]> Inner(int depth) =>
        depth == 0 ? Gen.Const(Array.Empty<string>()) : Lines(depth - 1);

    private static readonly Gen<string[]> Kind = Lines(2)
        .Select(l => (string[])["kind soft starter", .. l, "end"]);

    /// <summary>Whole files.</summary>
    public static readonly Gen<string> File = Gen.Select(
        Gen.Frequency((5, Statement.Select(s => new[] { s })), (1, Kind)).Array[0, 8],
        Gen.Int[0, int.MaxValue],
        (parts, seed) => Layout.Spread(parts.SelectMany(p => p), new Random(seed))
    );

    private static Gen<string> Of(params string[] words) =>
        Gen.Int[0, words.Length - 1].Select(i => words[i]);

    private static Gen<string> Join(Gen<string> item, string separator, int least, int most) =>
        item.Array[least, most].Select(items => string.Join(separator, items));
}
