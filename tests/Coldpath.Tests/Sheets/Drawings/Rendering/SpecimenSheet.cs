using Coldpath.Findings;
using Coldpath.Sheets.Drawings;

namespace Coldpath.Tests.Sheets.Drawings.Rendering;

/// <summary>A drawing of every shape in every ink and tone, with text that tries to get out.</summary>
internal static class SpecimenSheet
{
    public const string Hostile = "<script>alert(\"1\")</script> & ]]> \u0007\u202Egnp.exe \uD800 \uFFFF é Ω";

    private static readonly SourceText Source = new("a.panel", "one\nK1 contactor\n");

    public static Figure Contactor { get; } =
        new()
        {
            Kind = FigureKind.Symbol,
            Title = "K1, contactor",
            Device = "K1",
            Part = "NO",
            Terminals = ["13", "14"],
            Net = "104",
            Span = new Span(Source, 4, 6),
            Shapes = Shapes,
        };

    public static Drawing Drawing { get; } = new(Hostile, [Sheet(1, "power"), Sheet(2, "control")]);

    private static IReadOnlyList<Shape> Shapes =>
        [
            .. Enum.GetValues<Ink>()
                .SelectMany(
                    (ink, i) =>
                        new Shape[]
                        {
                            new Polyline([new(5, 5 + i), new(30.12345, 5 + i)], ink),
                            new Arc(new(40, 10), 3 + i, 0, 200, ink),
                        }
                ),
            new Polyline([new(1, 20), new(5, 20), new(3, 25)], Ink.Line, Closed: true, Filled: true),
            new Ring(new(20, 25), 2, Ink.Line),
            new Ring(new(30, 25), 1, Ink.Line, Filled: true),
            new Lettering(new(5, 35), Hostile, 3),
            new Lettering(new(50, 45), "Upwards Bold", 3, Anchor.Middle, Bold: true, Upwards: true),
            new Lettering(new(50, 50), "K1:13-14", 2.5, Anchor.End),
        ];

    private static PlacedSheet Sheet(int number, string name) =>
        new(
            number,
            name,
            148.5,
            105,
            [
                .. from kind in Enum.GetValues<FigureKind>()
                from tone in Enum.GetValues<Tone>()
                select Contactor with
                {
                    Kind = kind,
                    Tone = tone,
                    Title = Hostile,
                },
                Contactor,
                Contactor with
                {
                    Shapes = [],
                    Title = "not drawn",
                },
            ]
        );
}
