using Coldpath.Sheets.Drawings;
using Coldpath.Sheets.Drawings.Rendering;
using FluentAssertions;
using SkiaSharp;

namespace Coldpath.Tests.Sheets.Drawings.Rendering;

public class ToneTests
{
    private static readonly Tone[] All = Enum.GetValues<Tone>();

    [Fact]
    public void Wires_tell_tones_apart_without_colour()
    {
        var looks = All.Select(t => Tones.Of(Ink.Line, t, isWire: true)).ToList();
        looks.Select(l => $"{l.Width} {string.Join(' ', l.Dashes)}").Should().OnlyHaveUniqueItems();
        var widths = looks.Select(l => l.Width).Order().ToList();
        widths
            .Zip(widths.Skip(1), (a, b) => b / a)
            .Should()
            .OnlyContain(r => r > 1.25, "weights are seen to differ");
    }

    [Fact]
    public void Symbols_tell_them_apart_by_weight() =>
        All.Select(t => Tones.Of(Ink.Line, t, isWire: false).Width).Should().OnlyHaveUniqueItems();

    [Fact]
    public void A_link_stays_dashed_in_every_tone() =>
        All.Should()
            .OnlyContain(t =>
                Tones
                    .Of(Ink.Dashed, t, true)
                    .Dashes.SequenceEqual(Tones.Of(Ink.Dashed, Tone.Plain, false).Dashes)
            );

    /// <summary>WCAG 2.1, 1.4.3.</summary>
    [Fact]
    public void Letters_can_be_read_on_white() =>
        All.Should().OnlyContain(t => 1.05 / (Luminance(SKColor.Parse(Tones.Colour(t))) + 0.05) >= 4.5);

    private static double Luminance(SKColor c) =>
        0.2126 * Linear(c.Red) + 0.7152 * Linear(c.Green) + 0.0722 * Linear(c.Blue);

    private static double Linear(byte value)
    {
        var part = value / 255.0;
        return part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4);
    }
}
