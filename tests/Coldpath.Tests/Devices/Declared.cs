using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;
using FluentAssertions;

namespace Coldpath.Tests.Devices;

/// <summary>Devices made from a line of the language.</summary>
internal static class Declared
{
    public static readonly PanelFacts Nec = new()
    {
        Rules = "NEC",
        Voltage = 480,
        Phases = 3,
        Frequency = 60,
        Earthing = "solidly earthed wye",
    };

    public static readonly PanelFacts Iec = Nec with
    {
        Rules = "IEC",
        Voltage = 400,
        SecondVoltage = 230,
        Frequency = 50,
        Earthing = "TN-S",
    };

    /// <summary>The device of a sound line.</summary>
    public static Blueprint Device(string line, PanelFacts? facts = null, KindLibrary? library = null)
    {
        var made = Instance(line, facts, library);
        made.Findings.Should().BeEmpty();
        return made.Blueprint!;
    }

    /// <summary>What the line gives, with findings.</summary>
    public static Instantiation Instance(string line, PanelFacts? facts = null, KindLibrary? library = null)
    {
        var parsed = PanelParser.Parse(new SourceText("test.panel", line + "\n"));
        parsed.Findings.Should().BeEmpty();
        var declaration = parsed.Panel.Statements.OfType<DeclarationSyntax>().Single();
        var common = CommonRatings.Split(declaration.Atoms);
        library ??= KindLibrary.Standard;
        var kind = library.Find(declaration.KindName);
        kind.Should().NotBeNull($"'{declaration.KindName}' is a kind");
        return KindCompiler.Instantiate(
            kind!,
            library,
            new DeviceDeclaration(declaration.Tags[0].Text, common.Rest, declaration.Span),
            facts ?? Nec
        );
    }

    /// <summary>The standard library with one kind more.</summary>
    public static KindLibrary With(string kind)
    {
        var parsed = PanelParser.Parse(new SourceText("own.kinds", kind + "\n"));
        parsed.Findings.Should().BeEmpty();
        var (library, findings) = KindLibrary.Standard.With(parsed.Panel.Statements.OfType<KindSyntax>());
        findings.Should().BeEmpty();
        return library;
    }
}
