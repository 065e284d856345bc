using System.Globalization;
using Coldpath.Findings;

namespace Coldpath.Trials.Sites;

/// <summary>
/// Writes sites: starters of mixed kinds on line-ups with two incomers and a tie, fed through distribution boards from a
/// root with utility and generator. Starters take their control voltage from a transformer of their own, from their
/// line-up's or from the neighbouring line-up's, and some take a signal from the starter before them. Four in ten are
/// described each by a text of its own; the others share a few texts.
/// </summary>
internal sealed class SiteGenerator
{
    private const int FeedersOfBoard = 4;

    private readonly Dictionary<string, string> files = new(StringComparer.Ordinal);
    private readonly List<string> includes = [];
    private readonly List<string> joints = [];
    private readonly Random random;
    private readonly int startersInLineUp;

    private SiteGenerator(int seed, int startersInLineUp) =>
        (random, this.startersInLineUp) = (new Random(seed), startersInLineUp);

    /// <param name="starters">How many.</param>
    /// <param name="seed">The same for the same site.</param>
    public static SourceText Write(int starters, int seed, int startersInLineUp = 10)
    {
        var generator = new SiteGenerator(seed, startersInLineUp);
        generator.LineUps(starters);
        var text = $"""
            site "Trial of {starters} starters"
              rules   NEC
              system  480 V 3-phase 60 Hz, solidly earthed wye

            {string.Join('\n', generator.includes)}

            {string.Join('\n', generator.joints)}

            """;
        return generator.Source("site.panel", text);
    }

    private SourceText Source(string name, string text) =>
        new(name, text)
        {
            Beside = file =>
                files.TryGetValue(file, out var beside)
                    ? new IncludedText(Source(file, beside))
                    : new IncludedText(null),
        };

    private void LineUps(int starters)
    {
        var count = (starters + startersInLineUp - 1) / startersInLineUp;
        for (var lineUp = 1; lineUp <= count; lineUp++)
        {
            var first = ((lineUp - 1) * startersInLineUp) + 1;
            var last = Math.Min(starters, lineUp * startersInLineUp);
            LineUp(lineUp, first, last);
        }
        Feed([.. Enumerable.Range(1, count).SelectMany(l => new[] { $"L{l}/GA", $"L{l}/GB" })], 1);
    }

    private void LineUp(int number, int first, int last)
    {
        var tag = $"L{number}";
        files[$"lineup-{last - first + 1}.panel"] = StarterTexts.LineUp(last - first + 1);
        includes.Add($"include \"lineup-{last - first + 1}.panel\" as {tag}");
        for (var starter = first; starter <= last; starter++)
        {
            var shape = StarterShape.Of(random);
            var file = shape.IsUnique ? $"starter-{Number(starter)}.panel" : $"standard-{shape.Name}.panel";
            files[file] = StarterTexts.Starter(shape);
            includes.Add($"include \"{file}\" as P{Number(starter)}");
            joints.Add($"{tag}/Q{Number(starter - first + 1)} -> P{Number(starter)}/MAINS[L1, L2, L3]");
            if (shape.Control != Control.Own)
                ControlVoltage(
                    shape.Control == Control.LineUp || number == 1 ? tag : $"L{number - 1}",
                    starter
                );
            if (shape.TakesSignal && starter > first)
                Signal(starter);
        }
    }

    private void ControlVoltage(string from, int starter)
    {
        joints.Add($"{from}/X9:1 -> P{Number(starter)}/FC:L");
        joints.Add($"{from}/X9:2 -> P{Number(starter)}/FC:N");
    }

    private void Signal(int starter)
    {
        joints.Add($"P{Number(starter)}/X1:1 -> P{Number(starter - 1)}/X1:5");
        joints.Add($"P{Number(starter - 1)}/X1:6 -> P{Number(starter)}/X1:2");
    }

    /// <summary>Boards above boards, until one feeds all.</summary>
    private void Feed(IReadOnlyList<string> supplies, int level)
    {
        if (supplies.Count <= FeedersOfBoard)
        {
            Root(supplies);
            return;
        }
        var boards = new List<string>();
        foreach (var chunk in supplies.Chunk(FeedersOfBoard))
        {
            var tag = $"D{level}.{boards.Count + 1}".Replace('.', '_');
            files[$"board-{chunk.Length}.panel"] = StarterTexts.Board(chunk.Length, isRoot: false);
            includes.Add($"include \"board-{chunk.Length}.panel\" as {tag}");
            Join(tag, chunk);
            boards.Add($"{tag}/MAINS");
        }
        Feed(boards, level + 1);
    }

    private void Root(IReadOnlyList<string> supplies)
    {
        files["root.panel"] = StarterTexts.Board(supplies.Count, isRoot: true);
        includes.Add("include \"root.panel\" as R");
        Join("R", supplies);
    }

    private void Join(string board, IReadOnlyList<string> supplies)
    {
        for (var i = 0; i < supplies.Count; i++)
            joints.Add($"{board}/Q{Number(i + 1)} -> {supplies[i]}[L1, L2, L3]");
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
