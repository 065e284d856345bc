using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;
using Coldpath.Panels;
using Coldpath.Wiring;
using CsCheck;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Panels;

/// <summary>What must hold of every panel that ships.</summary>
public class SamplePanelTests
{
    public static TheoryData<Sample> Panels => new(Samples.Panels);

    [Theory]
    [MemberData(nameof(Panels))]
    public void It_binds_to_a_sound_netlist(Sample panel)
    {
        var result = Bind(panel.Text);
        result.Findings.Select(f => f.Message).Should().BeEmpty();
        NetlistSoundness.Check(result.Netlist!);
    }

    [Theory]
    [MemberData(nameof(Panels))]
    public void Renaming_its_tags_renames_its_netlist_and_nothing_else(Sample panel)
    {
        var tags = PanelParser
            .Parse(new SourceText(panel.Name, panel.Text))
            .Panel.Statements.OfType<DeclarationSyntax>()
            .SelectMany(d => d.Tags)
            .Select(t => t.Text)
            .Distinct()
            .ToList();
        var renaming = new Renaming(tags);
        var renamed = Bind(renaming.OfPanel(panel.Text)).Netlist!;
        var netlist = NetlistJson.ToText(Bind(panel.Text).Netlist!);
        NetlistJson.ToText(renamed).Should().Be(renaming.OfNetlist(netlist));
    }

    [Theory]
    [MemberData(nameof(Panels))]
    public void Writing_its_contacts_numbers_changes_no_meaning(Sample panel)
    {
        var source = new SourceText(panel.Name, panel.Text);
        var parsed = PanelParser.Parse(source);
        var bound = PanelBinder.Bind(parsed, KindLibrary.Standard);
        var formatted = PanelFormatter.Format(parsed.Panel, source, bound.Panel.AllocatedContacts);
        var again = Bind(formatted);
        again.Panel.AllocatedContacts.Should().BeEmpty();
        NetlistJson
            .ToText(WithoutPlaces(again.Netlist!))
            .Should()
            .Be(NetlistJson.ToText(WithoutPlaces(bound.Netlist!)));
    }

    [Fact]
    public void No_text_however_broken_makes_binding_throw()
    {
        var lines = Samples.All.SelectMany(s => s.Text.Split('\n')).ToArray();
        var tokens = lines
            .SelectMany(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Distinct()
            .ToArray();
        var reached = 0;
        Gen.Select(
                Gen.Int[0, Samples.Panels.Count - 1].Select(i => Samples.Panels[i]),
                Gen.Int,
                Gen.Int[1, 12]
            )
            .Sample(
                (panel, seed, edits) =>
                {
                    var broken = Broken(panel.Text, new Random(seed), edits, tokens);
                    var result = Bind(broken);
                    (result.Netlist is null)
                        .Should()
                        .Be(result.Findings.Any(f => f.Severity >= Severity.Defect));
                    if (result.Netlist is not null)
                        NetlistSoundness.Check(result.Netlist);
                    Interlocked.Increment(ref reached);
                },
                iter: 300,
                threads: 1
            );
        reached.Should().BeGreaterThanOrEqualTo(300);
    }

    private static BoundResult Bind(string text) =>
        PanelBinder.Bind(PanelParser.Parse(new SourceText("sample.panel", text)), KindLibrary.Standard);

    private static Netlist WithoutPlaces(Netlist netlist) =>
        netlist with
        {
            Devices = [.. netlist.Devices.Select(d => d with { Span = [] })],
            Intents = [.. netlist.Intents.Select(i => i with { Span = [] })],
        };

    /// <summary>Words exchanged, doubled, left out and put in.</summary>
    private static string Broken(string text, Random random, int edits, string[] tokens)
    {
        var lines = text.Split('\n');
        for (var i = 0; i < edits; i++)
        {
            var at = random.Next(lines.Length);
            var words = lines[at].Split(' ').ToList();
            var word = random.Next(words.Count);
            var token = tokens[random.Next(tokens.Length)];
            switch (random.Next(4))
            {
                case 0:
                    words[word] = token;
                    break;
                case 1:
                    words.Insert(word, token);
                    break;
                case 2:
                    words.RemoveAt(word);
                    break;
                default:
                    lines[random.Next(lines.Length)] = lines[at];
                    break;
            }
            lines[at] = string.Join(' ', words);
        }
        return string.Join('\n', lines);
    }
}
