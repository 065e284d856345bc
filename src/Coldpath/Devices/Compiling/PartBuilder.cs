using Coldpath.Notation.Syntax;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>What a chain can name and pass: the sides, the parts and the families of contacts.</summary>
internal sealed class PartBuilder(KindContext context)
{
    private const string Coil = "coil";

    private readonly List<string> bars = [];
    private readonly List<Part> parts = [];
    private readonly List<ContactFamily> families = [];
    private IReadOnlyList<string>? line;
    private IReadOnlyList<string>? load;

    public IReadOnlyList<ContactFamily> Families => families;

    public IReadOnlyList<string> LineSide => line ?? Poles(p => p.A) ?? Bars;

    public IReadOnlyList<string> LoadSide => load ?? Poles(p => p.B) ?? Bars;

    /// <summary>Named parts, and the poles between the sides unless another part is what a bare name passes.</summary>
    public IReadOnlyList<Part> Parts =>
        parts.Exists(p => p.Through) || families.Exists(f => f.Through) || !HasPoles
            ? parts
            : [new Part("", LineSide, LoadSide, true), .. parts];

    /// <summary>"coil", or the words of a coil that has a name of its own.</summary>
    public static string NameOf(CoilSyntax coil) => coil.Name.Count == 0 ? Coil : string.Join(' ', coil.Name);

    public void Add(PlacedLine placed)
    {
        switch (placed.Line)
        {
            case BarSyntax bar:
                bars.AddRange(BarsOf(bar));
                break;
            case SideSyntax side:
                SetSide(side);
                break;
            case CoilSyntax coil:
                var (a, b) = context.Nets.Of(coil.Ends, null);
                parts.Add(new Part(NameOf(coil), [a], [b], false));
                break;
            case FamilySyntax family:
                families.Add(Family(family));
                break;
            case ElementSyntax element
                when placed.Pole is null && context.Elements.TryGetValue(placed, out var named):
                AddPart(element, named);
                break;
        }
    }

    private bool HasPoles => bars.Count == 0 && LineSide.Count > 0 && LineSide.Count == LoadSide.Count;

    private List<string> Bars => line is null && load is null ? bars : [];

    private List<string>? Poles(Func<PairSyntax, WordSyntax> end)
    {
        var ends = context
            .Unfolding.Poles.Select(p => context.Nets.Of(end(p.Ends), null))
            .Where(Nets.IsTerminal)
            .ToList();
        return ends.Count == 0 ? null : ends;
    }

    private IEnumerable<string> BarsOf(BarSyntax bar) =>
        bar
            .Terminals.Take(context.Unfolding.Count(bar.First, bar.Terminals.Count))
            .Select(t => Nets.IsAny(t) ? Nets.Any : context.Nets.Of(t.Names[0], null));

    private void SetSide(SideSyntax side)
    {
        var count = context.Unfolding.Count(side.First, side.Terminals.Names.Count);
        IReadOnlyList<string> terminals =
        [
            .. side.Terminals.Names.Take(count).Select(t => context.Nets.Of(t, null)),
        ];
        if (side.IsLoadSide)
            load = terminals;
        else
            line = terminals;
    }

    /// <summary>Elements of one name are one part, as wide as there are of them.</summary>
    private void AddPart(ElementSyntax element, NamedElement named)
    {
        var name = string.Join(' ', element.Name);
        if (!Nets.IsTerminal(named.A) || !Nets.IsTerminal(named.B) || (name.Length == 0 && !element.Through))
            return;
        var at = parts.FindIndex(p => p.Name == name);
        if (at < 0)
            parts.Add(new Part(name, [named.A], [named.B], element.Through));
        else
            parts[at] = parts[at] with
            {
                Left = [.. parts[at].Left, named.A],
                Right = [.. parts[at].Right, named.B],
            };
    }

    private ContactFamily Family(FamilySyntax family) =>
        new(
            string.Join(' ', family.Name),
            family.Ends.A.Text,
            family.Ends.B.Text,
            family.Through,
            context.Conditions.Of(family.ClosedWhen, null, ConditionUse.Guard),
            family.By is { } by ? context.Variable(by, null) : null,
            family.Welds
        );
}
