namespace Coldpath.Inspection;

/// <summary>Small sound panels that the examples on the cards start from; embedded as <c>Inspection/Bases/*.panel</c>.</summary>
public static class BasePanels
{
    private const string Prefix = "Coldpath.Inspection.Bases.";

    /// <exception cref="ArgumentException">There is no such base.</exception>
    public static string Text(string name)
    {
        using var stream =
            typeof(BasePanels).Assembly.GetManifestResourceStream(Prefix + name + ".panel")
            ?? throw new ArgumentException($"no base panel '{name}'", nameof(name));
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
