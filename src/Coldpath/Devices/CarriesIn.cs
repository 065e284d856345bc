using Coldpath.Wiring;

namespace Coldpath.Devices;

/// <summary>
/// Any <see cref="ElementType.Thermal"/> element of another device carries current. Stands in blueprints only: the
/// panel puts the elements in its place.
/// </summary>
public sealed record CarriesIn(string Device) : Expression;
