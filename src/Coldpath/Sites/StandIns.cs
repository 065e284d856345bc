using System.Globalization;

namespace Coldpath.Sites;

/// <summary>Names that stand in for those of other panels while one is searched.</summary>
internal sealed class StandIns
{
    private readonly Dictionary<string, string> standIns = new(StringComparer.Ordinal);
    private readonly Dictionary<Source, Source> sources = [];

    /// <summary>The stand-in for a name, the same one each time.</summary>
    public string For(string name)
    {
        if (!standIns.TryGetValue(name, out var standIn))
            standIns.Add(
                name,
                standIn = $"\u2039{(standIns.Count + 1).ToString(CultureInfo.InvariantCulture)}\u203a"
            );
        return standIn;
    }

    /// <summary>An outline whose sources bear stand-ins; those of the part itself keep their names.</summary>
    public Outline For(Outline outline, string own) =>
        outline with
        {
            Feeds = [.. outline.Feeds.Select(f => f.Source.Home == own ? f : For(f))],
            Welded = [.. outline.Welded.Select(f => f.Source.Home == own ? f : For(f))],
        };

    private Feed For(Feed feed) =>
        feed with
        {
            Sources = new Alike([For(feed.Source)]),
            Through = feed.Through.Isolator is { } isolator
                ? feed.Through with
                {
                    Isolator = isolator with { Tag = For(isolator.Tag) },
                }
                : feed.Through,
        };

    /// <summary>A text with the names themselves.</summary>
    public string Undo(string text)
    {
        if (text.Contains('\u2039', StringComparison.Ordinal))
            foreach (var (name, standIn) in standIns)
                text = text.Replace(standIn, name, StringComparison.Ordinal);
        return text;
    }

    private Source For(Source source)
    {
        if (!sources.TryGetValue(source, out var standIn))
            sources.Add(source, standIn = source.Called(For(source.Name)));
        return standIn;
    }
}
