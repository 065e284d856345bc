using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>How a part lets current through from one of its nets to another.</summary>
/// <param name="Best">The best grade there.</param>
/// <param name="Isolator">Its own device that every way through switches passes; null where there is none.</param>
/// <param name="Clears">Every way through switches passes a device of its own that opens on a short.</param>
/// <param name="AlsoLoose">Ways through loads are left once that isolator is open, or there are only such.</param>
/// <param name="LastIsolator">Its own device that ways through loads pass as well.</param>
internal sealed record Passage(
    Grade Best,
    NetlistDevice? Isolator,
    bool Clears,
    bool AlsoLoose,
    NetlistDevice? LastIsolator
)
{
    public static readonly Passage None = new(Reached.Not, null, false, false, null);

    /// <summary>
    /// What becomes of a feed: what comes through switches alone, and what comes through loads. Where the part has no
    /// isolator of its own in all the ways, the one that the feed has passed before still counts.
    /// </summary>
    public IEnumerable<Feed> Of(Feed origin)
    {
        if (Best < Grade.Loose)
            yield return origin with
            {
                Grade = Best,
                Through = new(Isolator ?? origin.Through.Isolator, origin.Through.Clears || Clears),
            };
        if (AlsoLoose)
            yield return origin with
            {
                Grade = Grade.Loose,
                Through = new(LastIsolator ?? origin.Through.Isolator, false),
            };
    }
}
