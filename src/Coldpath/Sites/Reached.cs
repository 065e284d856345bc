using Coldpath.Wiring;

namespace Coldpath.Sites;

/// <summary>One way along a link.</summary>
/// <param name="To">The number of the net it leads to.</param>
/// <param name="Link">It.</param>
internal sealed record Hop(int To, Link Link);

/// <summary>The nets that current can come to from one, each with the best grade, and how it came there.</summary>
internal sealed class Reached
{
    /// <summary>Worse than any grade.</summary>
    public const Grade Not = Grade.Loose + 1;

    private readonly IReadOnlyDictionary<string, int> places;
    private readonly Grade[] grades;
    private readonly (int From, Hop By)?[] came;

    /// <param name="places">The number of each net.</param>
    /// <param name="start">Where it begins.</param>
    /// <param name="grade">The grade at which it is there.</param>
    public Reached(IReadOnlyDictionary<string, int> places, int start, Grade grade)
    {
        this.places = places;
        grades = new Grade[places.Count];
        Array.Fill(grades, Not);
        grades[start] = grade;
        came = new (int, Hop)?[places.Count];
    }

    /// <summary>The grade at the net; <see cref="Not"/> where it does not come.</summary>
    public Grade this[string net] => grades[places[net]];

    public Grade this[int net] => grades[net];

    /// <summary>The nets that it comes to at just this grade.</summary>
    public IEnumerable<string> At(Grade same) =>
        places.Where(p => grades[p.Value] == same).Select(p => p.Key);

    /// <summary>Takes the hop from a net reached at the grade; the grade it leads to, if that is better than before.</summary>
    public Grade? Improve(int from, Hop hop, Grade at)
    {
        var next = at > hop.Link.Grade ? at : hop.Link.Grade;
        if (next >= grades[hop.To])
            return null;
        grades[hop.To] = next;
        came[hop.To] = (from, hop);
        return next;
    }

    /// <summary>The links of a best way to the net, from its end on.</summary>
    public IEnumerable<Link> WayTo(string net)
    {
        for (var last = came[places[net]]; last is { } hop; last = came[hop.From])
            yield return hop.By.Link;
    }
}
