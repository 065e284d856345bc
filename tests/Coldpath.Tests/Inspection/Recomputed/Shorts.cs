using Coldpath.Wiring;

namespace Coldpath.Tests.Inspection.Recomputed;

/// <summary>Supplies shorted in themselves, between each other, and with no device in the way.</summary>
internal static class Shorts
{
    private static readonly object Unprotected = Part.Is("unprotected");

    public static IEnumerable<string> Found(Trade trade, Survey survey)
    {
        var supplies = trade.Supplies.ToArray();
        var within = supplies.Select(s => Part.All(Part.Holds(Inside(s)), Part.Not(Unprotected)));
        var between =
            from a in supplies.Index()
            from b in supplies.Skip(a.Index + 1)
            select Part.All(Part.Holds(Parallel(a.Item, b)), Part.Not(Unprotected));
        var asked = new[] { Part.Any(within), Part.Any(between), Unprotected };
        string[] names = ["phase-to-phase-short", "supplies-paralleled", "unprotected-short"];
        return names.Zip(survey.Happens(asked)).Where(f => f.Second).Select(f => f.First);
    }

    /// <summary>Two conductors of different voltage in one solid component.</summary>
    private static object Inside(Supply supply) =>
        Part.All(
            new { @short = supply.Name },
            Part.Any(
                from a in supply.Conductors
                from b in supply.Conductors
                where Phasors.Between(a, b) > 0
                select Part.All(Part.Joined(a.Net, b.Net), Part.Of(a.Present), Part.Of(b.Present))
            )
        );

    /// <summary>Both part of a short and in two common components, neither shorted in itself.</summary>
    private static object Parallel(Supply one, Supply other)
    {
        var meetings = (
            from a in one.Conductors
            from b in other.Conductors
            let holds = Part.All(Part.Joined(a.Net, b.Net), Part.Of(a.Present), Part.Of(b.Present))
            select (a.Net, Holds: holds)
        ).ToArray();
        return Part.All(
            new { @short = one.Name },
            new { @short = other.Name },
            Part.Not(Inside(one)),
            Part.Not(Inside(other)),
            Part.Any(
                from first in meetings
                from second in meetings
                where first.Net != second.Net
                select Part.All(first.Holds, second.Holds, Part.Not(Part.Joined(first.Net, second.Net)))
            )
        );
    }
}
