using Coldpath.Panels;

namespace Coldpath.Sheets.Drawings.Power;

/// <summary>Which terminals of a unit stand above and which below, each side in the order of drawing.</summary>
internal sealed record Sides(IReadOnlyList<string> Above, IReadOnlyList<string> Below)
{
    /// <param name="touches">How chains touch the unit, in the order of the text.</param>
    public static Sides Of(Unit unit, IReadOnlyList<ElementPath> paths, IReadOnlyList<Passage> touches)
    {
        var blueprint = unit.Device.Blueprint;
        var (above, below) = (new List<string>(), new List<string>());
        var begins = paths.Select(p => p.From).ToHashSet(StringComparer.Ordinal);
        var ends = paths.Where(p => p.IsThrough).Select(p => p.To).ToHashSet(StringComparer.Ordinal);
        var tapped = paths
            .Where(p => p is { IsThrough: true, IsLoad: false })
            .Select(p => p.To)
            .ToHashSet(StringComparer.Ordinal);
        var left = touches.SelectMany(t => t.Left).ToHashSet(StringComparer.Ordinal);
        foreach (var terminal in unit.Terminals)
        {
            var (line, load) = (blueprint.LineSide.Contains(terminal), blueprint.LoadSide.Contains(terminal));
            var fed =
                ends.Contains(terminal)
                && (!begins.Contains(terminal) || (load && tapped.Contains(terminal)));
            if (fed && (load || !line))
                below.Add(terminal);
            else if (fed)
                above.Add(terminal);
            else if (begins.Contains(terminal))
                above.Add(terminal);
            else if (line && load)
            {
                above.Add(terminal);
                below.Add(terminal);
            }
            else if (line || (!load && left.Contains(terminal)))
                above.Add(terminal);
            else
                below.Add(terminal);
        }
        var feedsWindings = paths.Any(p => p.IsLoad && p.IsThrough);
        return new(
            InOrder(above, blueprint.LineSide),
            InOrder(below, feedsWindings ? AsTouched(touches) : blueprint.LoadSide)
        );
    }

    /// <summary>Ends of windings stand as the wiring meets them first: no conductor needs to cross another.</summary>
    private static IReadOnlyList<string> AsTouched(IReadOnlyList<Passage> touches) =>
        [.. touches.SelectMany(t => t.Left.Concat(t.Right)).Distinct()];

    private static IReadOnlyList<string> InOrder(List<string> terminals, IReadOnlyList<string> order)
    {
        var rank = order.Distinct().Select((t, i) => (t, i)).ToDictionary(p => p.t, p => p.i);
        return [.. terminals.OrderBy(t => rank.GetValueOrDefault(t, int.MaxValue))];
    }
}
