using Coldpath.Panels;
using Coldpath.Sheets.Drawings.Symbols;

namespace Coldpath.Sheets.Drawings.Control;

/// <summary>What is lettered beside a part, and what it is called in a sentence.</summary>
internal static class PartWords
{
    private static readonly string[] Sorts = ["NO", "NC", "at"];

    /// <summary>What it does: positions, function, when it closes, setting; each a line of its own.</summary>
    public static IReadOnlyList<string> Notes(ControlPart part)
    {
        var lines = new List<string>();
        if (Words(part) is { Length: > 0 } words)
            lines.Add(words);
        if (part.Positions.Count > 0)
            lines.Add(string.Join(" or ", part.Positions));
        if (Rating(part, "label") is { } label)
            lines.Add(label);
        if (part.Role == ControlRole.Contact)
            lines.AddRange(Sensing(part));
        if (part is { Role: ControlRole.Coil, Part: "coil" })
            lines.AddRange(new[] { Rating(part, "coil"), Rating(part, "delay") }.OfType<string>());
        if (part.Role == ControlRole.Through && Rating(part, "current") is { } current)
            lines.Add(current);
        return lines;
    }

    /// <summary>"K1 coil, A1 to A2", "X1:3".</summary>
    public static string Title(ControlPart part, string? left, string? right)
    {
        var tag = part.Device.Tag;
        if (part.Role == ControlRole.Terminal)
            return $"{tag}:{left ?? right}";
        var at = part.Positions.Count > 0 ? $" {string.Join(" or ", part.Positions)}" : "";
        var words = part.Part.Length > 0 ? part.Part : part.Device.Blueprint.Kind.Name;
        return $"{tag} {words}{at}, {left} to {right}";
    }

    private static IEnumerable<string> Sensing(ControlPart part) =>
        new[] { ("closes", Rating(part, "closes")), ("opens", Rating(part, "opens")) }
            .Where(r => r.Item2 is not null)
            .Select(r => $"{r.Item1} {r.Item2}");

    /// <summary>The words around the tag, but for those that the symbol shows.</summary>
    private static string Words(ControlPart part) =>
        part.Part == "coil"
            ? ""
            : string.Join(' ', part.Part.Split(' ', StringSplitOptions.RemoveEmptyEntries).Except(Sorts));

    private static string? Rating(ControlPart part, string name) =>
        part.Device.Blueprint.Ratings.FirstOrDefault(r => r.Name == name)?.Text;
}
