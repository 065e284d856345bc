using System.Globalization;
using Coldpath.Standards;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>What is lettered at the top of a section's rails.</summary>
internal static class RailLabels
{
    private const double NameSize = 3;
    private const double TextSize = 2.2;

    /// <summary>Phase voltages of three-phase systems (IEC 60038, table 1; ANSI C84.1, table 1).</summary>
    private static readonly double[] Nominal = [120, 230, 277, 347, 400];

    public static Heading Of(LadderSection section, LadderFacts facts, LadderFrame frame)
    {
        var most = (frame.Right - frame.Left - 10) / 2;
        var (left, right) = (FeedOf(section.Left), FeedOf(section.Right));
        return new(
            null,
            Rail(section.Left, left, right, true, facts, frame.Left, most),
            Rail(section.Right, right, left, false, facts, frame.Right, most)
        );

        Feed? FeedOf(string? net) => net is null ? null : facts.Feeds.At(net);
    }

    private static Rail? Rail(
        string? net,
        Feed? feed,
        Feed? other,
        bool isLeft,
        LadderFacts facts,
        double x,
        double most
    )
    {
        if (net is null)
            return null;
        var earthed = facts.Feeds.IsEarthed(net);
        var lines = TextStack.Of(facts.Wires.NameOf(net) ?? net, NameSize, true, most);
        var words = new[]
        {
            Voltage(feed, other, isLeft),
            earthed ? Vocabulary.For(facts.Panel.System.Rules).Earthed : null,
        }
            .OfType<string>()
            .ToList();
        if (words.Count > 0)
            lines = lines.With(TextStack.Of(string.Join(", ", words), TextSize, most: most));
        if (facts.Islands.PowerOf(net) is { } power)
            lines = lines.With(new([new(power.Terminal + ",", TextSize, false, [power])]));
        return new(net, x, earthed, lines);
    }

    /// <summary>On the left the voltage between the rails, on the right what the return is.</summary>
    private static string? Voltage(Feed? feed, Feed? other, bool isLeft)
    {
        if (feed is null)
            return null;
        var kind = feed.Supply.Direct ? "DC" : "AC";
        if (isLeft)
            return $"{Number(other is null ? feed.Conductor.Volts : feed.VoltsTo(other) ?? feed.Conductor.Volts)} V {kind}";
        return feed.Conductor.Volts == 0 ? "0 V" : feed.Conductor.Name;
    }

    /// <summary>Volts of a star's conductor as they are called: 230 for 400 / √3.</summary>
    private static string Number(double volts)
    {
        var called = Nominal.FirstOrDefault(n => Math.Abs(volts - n) < 0.005 * n, Math.Round(volts));
        return called.ToString(CultureInfo.InvariantCulture);
    }
}
