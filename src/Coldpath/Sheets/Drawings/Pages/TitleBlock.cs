using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Pages;

/// <summary>The strip at the foot of a sheet, from the panel's header: the data fields of ISO 7200 that it has.</summary>
internal static class TitleBlock
{
    public const double Height = 20;

    /// <summary>Room that its fields need.</summary>
    public const double Narrowest = 170;
    private const double Small = 1.8;
    private const double Text = 3;
    private const double TitleSize = 4.5;
    private const double Inset = 1.5;

    private const string Caution =
        "Verify by measurement: the description may not match the panel. Local codes and licensed practice decide.";

    public static Figure Of(Panel panel, Box frame, int sheet, int sheets, string name, Shown shown)
    {
        var box = frame with { Top = frame.Bottom - Height };
        var right = new (string Head, string Value, double Width)[]
        {
            ("drawing", panel.Drawing ?? "\u2013", 32),
            ("revision", panel.Revision ?? "\u2013", 16),
            ("sheet", $"{sheet} of {sheets}", 18),
        };
        var shapes = new List<Shape> { Rectangle(box, Ink.Heavy) };
        var x = box.Right;
        foreach (var (head, value, width) in right.Reverse())
        {
            x -= width;
            shapes.Add(new Polyline([new(x, box.Top), new(x, box.Bottom - CautionHeight)], Ink.Fine));
            shapes.AddRange(Field(x, box.Top, width, head, value, Text));
        }
        var system = SystemWords(panel);
        x -= SystemWidth;
        shapes.Add(new Polyline([new(x, box.Top), new(x, box.Bottom - CautionHeight)], Ink.Fine));
        shapes.AddRange(Field(x, box.Top, SystemWidth, "system", system[0], Text));
        shapes.Add(Letters(x, box.Top + 12.5, SystemWidth, system[1], Small + 0.4));
        shapes.AddRange(Field(box.Left, box.Top, x - box.Left, name, panel.Name, TitleSize));
        if (shown.Caption is { } caption)
            shapes.Add(Letters(box.Left, box.Top + 13.7, x - box.Left, caption, Text));
        shapes.Add(
            new Polyline(
                [new(box.Left, box.Bottom - CautionHeight), new(box.Right, box.Bottom - CautionHeight)],
                Ink.Fine
            )
        );
        shapes.Add(Letters(box.Left, box.Bottom - 1.4, box.Width, Caution, Small + 0.2));
        return new Figure
        {
            Kind = FigureKind.Paper,
            Title = $"{panel.Name}, sheet {sheet} of {sheets}: {name}",
            Shapes = shapes,
        };
    }

    public static Polyline Rectangle(Box box, Ink ink) =>
        new(
            [
                new(box.Left, box.Top),
                new(box.Right, box.Top),
                new(box.Right, box.Bottom),
                new(box.Left, box.Bottom),
            ],
            ink,
            Closed: true
        );

    private const double CautionHeight = 4.5;
    private const double SystemWidth = 50;

    private static IReadOnlyList<string> SystemWords(Panel panel)
    {
        var system = panel.System;
        var phases = system.Direct ? "DC" : $"{system.Phases}-phase {system.Frequency} Hz";
        return [$"{system.Voltage} V {phases}", $"{system.Earthing}, {system.Rules}".TrimStart(',', ' ')];
    }

    private static IEnumerable<Shape> Field(
        double x,
        double y,
        double width,
        string head,
        string value,
        double size
    ) => [Letters(x, y + 3.2, width, head, Small), Letters(x, y + 9, width, value, size)];

    /// <summary>Smaller letters where the field is too narrow, down to half; then cut with a sign for it.</summary>
    private static Lettering Letters(double x, double y, double width, string text, double size)
    {
        var room = width - Inset * 2;
        var fitting = Math.Min(size, size * room / Math.Max(LetterWidths.Of(text, size, false), 0.1));
        fitting = Math.Max(fitting, size / 2);
        while (text.Length > 1 && LetterWidths.Of(text, fitting, false) > room)
            text = text[..^2] + "\u2026";
        return new(new(x + Inset, y), text, Math.Round(fitting, 2));
    }
}
