using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Coldpath.Sheets.Drawings;
using Coldpath.Tests.Cli;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings;

/// <summary>The table against what a browser measures.</summary>
public partial class LetterWidthTests
{
    private static readonly string[] Texts =
    [
        "Quarry dewatering, pump 3",
        "480Y/277 V, available 18 kA",
        "three-pole 175 A class J, interrupting 200 kA",
        "1/L1 3/L2 5/L3 2/T1 4/T2 6/T3",
        "A1 A2 13-14 95-96 IN1 COM P24 X1:12",
        "WATER TOWER, TYPE 11-111 VA",
        "iiiiiiii llllllll ........ ''''",
        "MMMMMMMM WWWWWWWW @@@@ %%%%",
        "Wasserpumpe Größe 3 über Straße",
        "Ligne générale à côté du moteur, où?",
        "Señal de caudal ¿qué? ±5 °C × 2",
        "Насос откачки воды, пульт №3",
        "Αντλία νερού θερμοκρασία Ωμ",
        "Čerpadlo vody, přívod, žlutá",
        "μF kΩ Ω ≤ ≥ ≈ – — … “quoted” ‘so’ € →",
    ];

    [Fact]
    public void They_are_what_a_browser_measures()
    {
        using var desk = new Desk();
        desk.With("letters.html", Page());
        var (dom, _) = Tool.Browse(desk.At("letters.html"));
        var measured = Measured()
            .Matches(WebUtility.HtmlDecode(dom))
            .Select(m => double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture))
            .ToList();
        measured.Should().HaveCount(Texts.Length * 2);
        foreach (var (i, text) in Texts.Index())
        {
            Near(LetterWidths.Of(text, 100, false), measured[2 * i], text);
            Near(LetterWidths.Of(text, 100, true), measured[2 * i + 1], text);
        }
    }

    [Fact]
    public void The_letters_of_those_texts_are_all_known() =>
        Texts.SelectMany(t => t.EnumerateRunes()).Where(r => !LetterWidths.Knows(r)).Should().BeEmpty();

    [Theory]
    [InlineData("漢字", 20)]
    [InlineData("e\u0301", 5.56)]
    [InlineData("\U0001F600", 14)]
    [InlineData("", 0)]
    public void Others_have_a_stated_width(string text, double width) =>
        LetterWidths.Of(text, 10, false).Should().BeApproximately(width, 0.01);

    [Fact]
    public void Width_grows_with_size_and_weight()
    {
        LetterWidths.Of("K1", 2, false).Should().BeApproximately(LetterWidths.Of("K1", 1, false) * 2, 1e-4);
        LetterWidths.Of("K1 on", 2, true).Should().BeGreaterThan(LetterWidths.Of("K1 on", 2, false));
    }

    private static void Near(double width, double measured, string text) =>
        (width / measured).Should().BeApproximately(1, 0.03, text);

    private static string Page()
    {
        var page = new StringBuilder(
            "<!doctype html><meta charset=\"utf-8\"><svg xmlns=\"http://www.w3.org/2000/svg\">"
        );
        foreach (var text in Texts)
        foreach (var weight in new[] { "normal", "bold" })
            page.Append(
                CultureInfo.InvariantCulture,
                $"<text font-family=\"{LetterWidths.Families}\" font-size=\"100\" font-weight=\"{weight}\" xml:space=\"preserve\">{WebUtility.HtmlEncode(text)}</text>"
            );
        return page.Append(
                "</svg><pre></pre><script>document.querySelector('pre').textContent=[...document.querySelectorAll('text')].map(t=>'w='+t.getComputedTextLength()+';').join('')</script>"
            )
            .ToString();
    }

    [GeneratedRegex(@"w=([\d.]+);")]
    private static partial Regex Measured();
}
