using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Panels.Binding;

/// <summary>The devices that are declared, and what their declarations say beside their ratings.</summary>
internal sealed class DeviceBinding
{
    private readonly Dictionary<string, MadeDevice> made = new(StringComparer.Ordinal);

    public DeviceBinding(PanelSyntax panel, Header header, MakeDevice make, BindingFindings findings)
    {
        foreach (var declaration in panel.Statements.OfType<DeclarationSyntax>())
        foreach (var tag in declaration.Tags)
        {
            var device = findings.AreTooMany ? Left(declaration) : make(declaration, tag, header.System);
            Roster.Add(new Declared(tag.Text, device.Blueprint, tag.Span));
            made.TryAdd(tag.Text, device);
            findings.Add(device.Findings);
        }
        var mentions = new MentionBinding(Roster, panel.BrokenWords, findings);
        foreach (var declaration in panel.Statements.OfType<DeclarationSyntax>())
            if (made[declaration.Tags[0].Text].Blueprint is { } blueprint)
                mentions.Check(declaration, blueprint);
    }

    public Roster Roster { get; } = new();

    /// <summary>Those whose declaration was understood.</summary>
    public IEnumerable<(string Tag, Blueprint Blueprint)> Known =>
        Roster.InOrder.Where(d => d.Blueprint is not null).Select(d => (d.Tag, d.Blueprint!));

    public IReadOnlyList<PlacedDevice> Placed(
        IReadOnlyDictionary<string, Knowledge> knowledge,
        ContactBook contacts,
        TerminalBook terminals
    ) =>
        [
            .. from device in Roster.InOrder
            where !device.IsNeighbour
            let said = made[device.Tag]
            where said.Blueprint is not null
            select new PlacedDevice
            {
                Tag = device.Tag,
                Blueprint = said.Blueprint!,
                Place = said.Common.Place?.Text,
                Standby = said.Common.Standby,
                Knowledge = knowledge.GetValueOrDefault(device.Tag, Said(said.Common)),
                Written = Written(said.Common.Rest),
                Span = device.Span,
                Terminals = terminals.Of(device.Tag).InOrder,
                Contacts = contacts.Of(device.Tag),
            },
        ];

    private static IReadOnlyList<string> Written(IReadOnlyList<AtomSyntax> ratings)
    {
        var runs = new List<string>();
        var open = false;
        foreach (var atom in ratings)
        {
            if (atom is CommaAtom)
                open = false;
            else if (open)
                runs[^1] += " " + atom.Span.Text;
            else
            {
                runs.Add(atom.Span.Text);
                open = true;
            }
        }
        return runs;
    }

    private static MadeDevice Left(DeclarationSyntax declaration) =>
        new(null, CommonRatings.Split(declaration.Atoms), []);

    private static Knowledge Said(CommonRatings common) =>
        common.FromDrawing ? Knowledge.FromDrawing
        : common.Seen ? Knowledge.Seen
        : Knowledge.Described;
}
