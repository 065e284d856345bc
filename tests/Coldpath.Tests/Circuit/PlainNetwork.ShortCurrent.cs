using System.Numerics;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit;

/// <summary>Which elements carry the current of a short: all ways round, net by net.</summary>
internal sealed partial class PlainNetwork
{
    /// <summary>A solid element on a cycle of nets and supplies whose voltages do not sum to zero.</summary>
    public bool CarriesShort(string id)
    {
        var element = netlist.Elements.Single(e => e.Id == id);
        return Holds(element.Closed) && IsSolid(element) && WaysRound(element).Any(way => !SumsToZero(way));
    }

    /// <summary>Unsynchronised supplies never sum to zero.</summary>
    private static bool SumsToZero(IEnumerable<Step> way)
    {
        var supplied = way.Where(s => s.Supply is not null).ToArray();
        return supplied.Select(s => s.Supply!.Group).Distinct().Count() < 2
            && supplied.Aggregate(Complex.Zero, (sum, s) => sum + s.Volts).Magnitude < 1e-6;
    }

    /// <summary>Every way from the element's far end back to its near one that passes no place twice.</summary>
    private IEnumerable<IEnumerable<Step>> WaysRound(Element element)
    {
        var steps = ShortSteps().Where(s => s.Element != element).ToLookup(s => s.From);
        return From(element.B, [element.B]);

        IEnumerable<IEnumerable<Step>> From(string at, HashSet<string> passed) =>
            at == element.A
                ?
                [
                    [],
                ]
                : from step in steps[at]
                where !passed.Contains(step.To)
                from rest in From(step.To, [.. passed, step.To])
                select rest.Prepend(step);
    }

    /// <summary>Along a closed solid element, through a shorted diode, and from a supply's conductor to another by its middle.</summary>
    private IEnumerable<Step> ShortSteps()
    {
        var joins =
            from element in Conducting.Where(e => IsSolid(e) || ShortsThrough(e))
            select new Step(element.A, element.B, Complex.Zero) { Element = element };
        var conductors =
            from source in Lasting
            select new Step("z " + source.Supply.Name, source.Conductor.Net, Volts(source.Conductor))
            {
                Supply = source.Supply,
            };
        return joins
            .Concat(conductors)
            .SelectMany(s => new[] { s, s with { From = s.To, To = s.From, Volts = -s.Volts } });
    }

    private bool ShortsThrough(Element diode) =>
        diode.Type == ElementType.Diode
        && (
            from plus in Lasting
            from minus in Lasting
            where plus.Supply == minus.Supply
            where plus.Conductor.Polarity == Polarity.Plus && minus.Conductor.Polarity == Polarity.Minus
            where
                Reaches(plus.Conductor, diode.A, Grade.Solid)
                && Reaches(minus.Conductor, diode.B, Grade.Solid)
            select plus
        ).Any();

    private sealed record Step(string From, string To, Complex Volts)
    {
        public Element? Element { get; init; }
        public Supply? Supply { get; init; }
    }
}
