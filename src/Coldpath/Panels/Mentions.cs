using Coldpath.Devices;
using Coldpath.Wiring;

namespace Coldpath.Panels;

/// <summary>What a blueprint says of other devices by their tags.</summary>
internal static class Mentions
{
    private const char Other = '@';

    /// <summary>"T5" of "@T5"; null for an element of the device's own.</summary>
    public static string? DeviceIn(string element) => element.StartsWith(Other) ? element[1..] : null;

    /// <summary>Devices whose current this one senses.</summary>
    public static IEnumerable<string> Sensed(Blueprint blueprint) =>
        blueprint
            .Network.Variables.SelectMany(v => v.Moves)
            .SelectMany(m => new[] { m.When, m.May })
            .SelectMany(CarriesIn)
            .Concat(
                blueprint
                    .Network.Devices.SelectMany(d => d.Protects)
                    .SelectMany(p => p.Elements)
                    .Select(DeviceIn)
            )
            .OfType<string>()
            .Distinct();

    /// <summary>Every rating that gives tags gives words, and no other rule speaks of a device.</summary>
    public static IEnumerable<string> Linked(Blueprint blueprint) =>
        blueprint.Links.SelectMany(l => l.Devices).Distinct();

    private static IEnumerable<string> CarriesIn(Expression expression) =>
        expression switch
        {
            CarriesIn c => [c.Device],
            Not not => CarriesIn(not.Term),
            All all => all.Terms.SelectMany(CarriesIn),
            Any any => any.Terms.SelectMany(CarriesIn),
            _ => [],
        };
}
