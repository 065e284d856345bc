using System.Reflection;
using Coldpath.Findings;

namespace Coldpath.Devices;

/// <summary>Texts of kinds by name, each with one kind.</summary>
internal interface IKindTexts
{
    IReadOnlyCollection<string> Names { get; }

    SourceText? Of(string name);
}

/// <summary>The texts that ship inside the program, one resource a kind: "soft starter.kinds".</summary>
internal sealed class StandardKinds : IKindTexts
{
    private const string Suffix = ".kinds";
    private static readonly Assembly Home = typeof(StandardKinds).Assembly;
    private readonly Dictionary<string, string> resources = new(StringComparer.Ordinal);

    public StandardKinds()
    {
        foreach (var resource in Home.GetManifestResourceNames())
            if (resource.EndsWith(Suffix, StringComparison.Ordinal))
                resources.Add(resource[..^Suffix.Length], resource);
    }

    public IReadOnlyCollection<string> Names => resources.Keys;

    public SourceText? Of(string name) =>
        resources.TryGetValue(name, out var resource) ? new SourceText(resource, Text(resource)) : null;

    private static string Text(string resource)
    {
        using var stream = Home.GetManifestResourceStream(resource)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
