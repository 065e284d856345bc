using Coldpath.Devices.Ratings;
using Coldpath.Notation.Syntax;

namespace Coldpath.Devices.Compiling;

/// <summary>Decides the <c>if</c>s of a kind, repeats its poles and works its derived numbers out.</summary>
internal sealed class Unfolding(
    RatingBook ratings,
    Arithmetic arithmetic,
    Conditions conditions,
    RatingFindings ratingFindings
)
{
    private readonly List<Pole> poles = [];

    /// <summary>All turns of all <c>for each pole</c> blocks met so far, in order.</summary>
    public IReadOnlyList<Pole> Poles => poles;

    public IReadOnlyList<PlacedLine> Of(IEnumerable<KindLineSyntax> lines, Pole? pole)
    {
        var placed = new List<PlacedLine>();
        foreach (var line in lines)
            Unfold(line, pole, placed);
        return placed;
    }

    /// <summary>How many of a list are used.</summary>
    public int Count(ArithmeticSyntax? first, int all)
    {
        if (first is null)
            return all;
        var asked = arithmetic.Needed(first);
        if (asked >= 1 && asked <= all && asked == Math.Floor(asked))
            return (int)asked;
        var name = first.Span.Text;
        ratingFindings.OutOfRange(ratings.PlaceOf(name), name, asked, all);
        return (int)Math.Clamp(asked, 1, all);
    }

    private void Unfold(KindLineSyntax line, Pole? pole, List<PlacedLine> placed)
    {
        switch (line)
        {
            case IfSyntax choice:
                placed.AddRange(
                    Of(conditions.IsSaid(choice.Condition, pole) ? choice.Then : choice.Else, pole)
                );
                break;
            case ForEachPoleSyntax each:
                UnfoldPoles(each, placed);
                break;
            case LetSyntax let:
                ratings.Derive(string.Join(' ', let.Name), arithmetic.Of(let.Value));
                break;
            default:
                placed.Add(new PlacedLine(line, pole));
                break;
        }
    }

    private void UnfoldPoles(ForEachPoleSyntax each, List<PlacedLine> placed)
    {
        var count = Count(each.First, each.Poles.Count);
        for (var i = 0; i < count; i++)
        {
            var pole = new Pole(i + 1, count == 1, each.Poles[i]);
            poles.Add(pole);
            placed.AddRange(Of(each.Lines, pole));
        }
    }
}
