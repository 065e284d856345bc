using Coldpath.Notation.Syntax;
using Coldpath.Wiring;

namespace Coldpath.Devices.Compiling;

/// <summary>Elements, coils' windings among them, in the order of their lines.</summary>
internal sealed class ElementBuilder(KindContext context)
{
    private static readonly WordTable<ElementType> Types = new(
        new("conductor", ElementType.Conductor),
        new("contact", ElementType.Contact),
        new("semiconductor", ElementType.Semiconductor),
        new("thermal", ElementType.Thermal),
        new("series", ElementType.Series),
        new("load", ElementType.Load),
        new("diode", ElementType.Diode),
        new("fault", ElementType.Fault)
    );

    private readonly List<Element> elements = [];

    public IReadOnlyList<Element> Elements => elements;

    public void Add(PlacedLine placed)
    {
        if (context.Elements.TryGetValue(placed, out var named))
            AddElement((ElementSyntax)placed.Line, named);
        else if (placed.Line is CoilSyntax coil)
            AddCoil(coil, context.Variables[placed].Local);
    }

    private void AddElement(ElementSyntax line, NamedElement named) =>
        elements.Add(
            new Element
            {
                Id = named.Id,
                Device = "",
                Pole = named.Pole?.Number ?? 0,
                Power = line.Power,
                A = named.A,
                B = named.B,
                Type = context.Word(line.Type, "type of element", Types),
                Closed = context.Conditions.Guard(named),
                Leaks = line.LeaksWhen is null
                    ? null
                    : context.Conditions.Of(line.LeaksWhen, named.Pole, ConditionUse.Guard),
                Burdens = line.Type.Text == "load" ? BurdenBands.OfLoad(context.Ratings) : [],
            }
        );

    private void AddCoil(CoilSyntax line, string armature)
    {
        var (a, b) = context.Nets.Of(line.Ends, null);
        elements.Add(
            new Element
            {
                Id = $"{a}-{b}",
                Device = "",
                A = a,
                B = b,
                Type = ElementType.Load,
                Burdens = BurdenBands.OfCoil(
                    context.Ratings,
                    context.Arithmetic.Of(line.At),
                    context.Arithmetic.IsDirect(line.At),
                    armature
                ),
            }
        );
    }
}
