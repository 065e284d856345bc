using System.Globalization;
using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>A supply, or a converter's output, as others see it.</summary>
/// <param name="name">In the site, "B0/MAINS".</param>
/// <param name="home">The part that holds it.</param>
/// <param name="supply">In that part's own names.</param>
/// <param name="earthed">Names of its conductors that are bonded to earth there.</param>
/// <param name="isSynchronised">With another one of its part.</param>
internal sealed class Source(
    string name,
    string home,
    Supply supply,
    IReadOnlyList<string> earthed,
    bool isSynchronised
)
{
    public string Name => name;
    public string Home => home;
    public Supply Supply => supply;
    public IReadOnlyList<string> Earthed => earthed;

    /// <summary>The same for sources that differ in their names and places alone.</summary>
    public string Sort { get; } =
        string.Join(
            ' ',
            supply
                .Conductors.Select(c =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{c.Name} {c.Volts:R} {c.Degrees:R} {c.Polarity}"
                    )
                )
                .Concat(earthed)
                .Append($"{supply.Direct} {supply.ExtraLow} {supply.Limited} {supply.Ohms}")
                .Append(isSynchronised ? $"{home} {supply.Group}" : "")
                .Append(supply.Store is null ? "" : name)
        );

    public Source Called(string other) => new(other, "", supply, earthed, isSynchronised);
}
