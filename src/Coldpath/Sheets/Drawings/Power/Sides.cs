using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Which terminals of a unit stand above and which below, each side in the order of drawing.</summary>
internal sealed record Sides(IReadOnlyList<string> Above, IReadOnlyList<string> Below)
{
    /// <param name="touches">How chains touch the unit, in the order of the text.</param>
    public static Sides Of(Unit unit, IReadOnlyList<ElementPath> paths, IReadOnlyList<Passage> touches)
    {
        var blueprint = unit.Device.Blueprint;
        var side = new Sidedness(blueprint, paths, touches);
        var feedsWindings = paths.Any(p => p.IsLoad && p.IsThrough);
        return new(
            InOrder(unit.Terminals.Where(side.IsAbove), blueprint.LineSide),
            InOrder(
                unit.Terminals.Where(side.IsBelow),
                feedsWindings ? AsTouched(touches) : blueprint.LoadSide
            )
        );
    }

    /// <summary>Ends of windings stand as the wiring meets them first: no conductor needs to cross another.</summary>
    private static IReadOnlyList<string> AsTouched(IReadOnlyList<Passage> touches) =>
        [.. touches.SelectMany(t => t.Left.Concat(t.Right)).Distinct()];

    private static IReadOnlyList<string> InOrder(IEnumerable<string> terminals, IReadOnlyList<string> order)
    {
        var rank = order.Distinct().Select((t, i) => (t, i)).ToDictionary();
        return [.. terminals.OrderBy(t => rank.GetValueOrDefault(t, int.MaxValue))];
    }
}
