using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;
using Coldpath.Panels;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Panels;

/// <summary>Every example of the page of the language means something where its devices are declared.</summary>
public class LanguagePageBindingTests
{
    private const string Header = """
        panel "Quarry dewatering, pump 3"
          rules   NEC
          system  480 V 3-phase 60 Hz, solidly earthed wye

        """;

    private static readonly IReadOnlyList<string> Declarations =
    [
        "supply MAINS 480Y/277 V",
        "disconnect Q1 200 A",
        "disconnect Q2 200 A",
        "distribution block XD1",
        "fuse F1 three-pole 175 A",
        "fuse F2 three-pole 200 A",
        "contactor K1 140 A, coil 120 V",
        "soft starter U1 124 A, control supply 120 V",
        "contactor K2 140 A, coil 120 V",
        "contactor K3 140 A, coil 120 V",
        "overload relay F3 set 96 A",
        "motor M1 75 hp 460 V",
        "control transformer T1 480 V to 120 V",
        "fuse F10 2 A",
        "fuse F11 2 A",
        "fuse F12 4 A",
        "emergency stop S0",
        "selector S1 HAND | OFF | AUTO",
        "push button S3",
        "level contact B1",
        "relay K0 coil 120 V",
        "lamp P1 red",
        "terminal strip X1",
    ];

    public static TheoryData<Sample> Blocks => new(Samples.LanguagePage);

    [Theory]
    [MemberData(nameof(Blocks))]
    public void Every_example_binds(Sample block)
    {
        var text = Completed(block.Text);
        var result = PanelBinder.Bind(
            PanelParser.Parse(new SourceText(block.Name, text)),
            KindLibrary.Standard
        );
        result.Findings.Select(f => $"{f.Location.Text}: {f.Message}").Should().BeEmpty();
        result.Netlist.Should().NotBeNull();
    }

    /// <summary>With a header and the devices that the example itself does not declare.</summary>
    private static string Completed(string block)
    {
        // The page shows how the standard contactor is written; a panel must call its own kind something else.
        if (block.StartsWith("kind contactor", StringComparison.Ordinal))
            return Header
                + block.Replace("kind contactor", "kind main contactor", StringComparison.Ordinal)
                + "main contactor K9 9 A, coil 24 V\n";
        var header = block.StartsWith("panel", StringComparison.Ordinal) ? "" : Header;
        var declared = TagsIn(block);
        var missing = Declarations.Where(d => !TagsIn(d).Overlaps(declared));
        return header + block + string.Join('\n', missing) + "\n";
    }

    private static HashSet<string> TagsIn(string text) =>
        [
            .. PanelParser
                .Parse(new SourceText("block", text))
                .Panel.Statements.OfType<DeclarationSyntax>()
                .SelectMany(d => d.Tags)
                .Select(t => t.Text),
        ];
}
