using Coldpath.Sheets.Drawings;
using Coldpath.Sheets.Drawings.Symbols;
using Coldpath.Tests.Devices;
using FluentAssertions;

namespace Coldpath.Tests.Sheets.Drawings;

public class ControlSymbolTests
{
    public static TheoryData<string, string, bool> Parts
    {
        get
        {
            var all = new TheoryData<string, string, bool>();
            foreach (var line in StandardKindsTests.Lines)
            foreach (var rules in new[] { "IEC", "NEC" })
            foreach (var operated in new[] { false, true })
                all.Add(line, rules, operated);
            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Parts))]
    public void Both_ends_are_met_and_all_is_tidy(string line, string rules, bool operated)
    {
        foreach (var part in SymbolParts.Control(SymbolParts.Device(line, rules), rules, operated))
        {
            var symbol = ControlSymbols.Of(part);
            symbol.ShouldReach(new At(0, 0), $"{line}, {part.Part}");
            symbol.ShouldReach(new At(symbol.Width, 0), $"{line}, {part.Part}");
            symbol.ShouldBeTidy($"{line}, {part.Part}");
            symbol.LinkAt.Y.Should().Be(symbol.Body.Bottom);
        }
    }

    [Theory]
    [InlineData("relay K1 coil 24 V DC")]
    [InlineData("push button S1 start")]
    [InlineData("emergency stop S0")]
    [InlineData("selector S1 HAND | OFF | AUTO")]
    [InlineData("key selector S1 NORMAL | BYPASS")]
    [InlineData("level contact B1")]
    [InlineData("limit switch B1")]
    [InlineData("on-delay timer K1 5 s, coil 24 V DC")]
    [InlineData("overload relay F1 5 A")]
    public void An_operated_contact_looks_different(string line)
    {
        foreach (var rules in new[] { "IEC", "NEC" })
        {
            var device = SymbolParts.Device(line, rules);
            var contacts = SymbolParts
                .Control(device, rules, false)
                .Where(p => p.Role == ControlRole.Contact)
                .ToList();
            contacts.Should().NotBeEmpty();
            foreach (var part in contacts)
                Drawn(part)
                    .Should()
                    .NotBe(Drawn(part with { ClosedNow = !part.ClosedNow }), $"{line}, {part.Part}");
        }
    }

    [Fact]
    public void Every_role_of_every_kind_is_drawn()
    {
        foreach (var line in StandardKindsTests.Lines)
        foreach (var rules in new[] { "IEC", "NEC" })
        foreach (var role in Enum.GetValues<ControlRole>())
        foreach (
            var part in new[]
            {
                "",
                "coil",
                "NO",
                "NC trip",
                "input run",
                "words that no kind has said so far",
            }
        )
        {
            var symbol = ControlSymbols.Of(
                new(SymbolParts.Device(line, rules), rules, part, role, ["A", "B"], false, true)
                {
                    Left = "X1:12",
                    Right = "X1:13",
                }
            );
            symbol.ShouldReach(new At(0, 0), $"{line}, {role}, {part}");
            symbol.ShouldReach(new At(symbol.Width, 0), $"{line}, {role}, {part}");
        }
    }

    [Theory]
    [InlineData("IEC", "red", "RD")]
    [InlineData("IEC", "green", "GN")]
    [InlineData("NEC", "amber", "A")]
    public void A_lamp_says_its_colour(string rules, string colour, string letters)
    {
        var part = SymbolParts.Control(SymbolParts.Device($"lamp P1 {colour}", rules), rules, false).Single();
        ControlSymbols.Of(part).Shapes.OfType<Lettering>().Select(l => l.Text).Should().Contain(letters);
    }

    private static string Drawn(ControlPart part) =>
        string.Join(
            '\n',
            ControlSymbols
                .Of(part)
                .Shapes.Select(s => s is Polyline l ? $"{l.Ink} {string.Join(' ', l.Points)}" : s.ToString())
        );
}
