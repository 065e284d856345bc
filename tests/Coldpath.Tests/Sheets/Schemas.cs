using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;
using FluentAssertions;
using Json.Schema;

namespace Coldpath.Tests.Sheets;

/// <summary>Validation against the schemas that are checked in, and the published one for SARIF.</summary>
internal static class Schemas
{
    private static readonly EvaluationOptions Options = new() { OutputFormat = OutputFormat.List };
    private static readonly ConcurrentDictionary<string, Lazy<JsonSchema>> Read = new();

    public static void ShouldFit(string json, string schema)
    {
        var result = Evaluate(json, schema);
        var errors = (result.Details ?? [])
            .Where(d => d.Errors is { Count: > 0 })
            .Select(d => $"{d.InstanceLocation}: {string.Join("; ", d.Errors!.Values)}");
        result.IsValid.Should().BeTrue(string.Join('\n', errors));
    }

    public static bool Fits(JsonNode json, string schema) => Evaluate(json.ToJsonString(), schema).IsValid;

    private static EvaluationResults Evaluate(string json, string schema)
    {
        using var document = JsonDocument.Parse(json);
        return Read.GetOrAdd(schema, Load).Value.Evaluate(document.RootElement, Options);
    }

    private static Lazy<JsonSchema> Load(string name) =>
        new(() =>
            JsonSchema.FromFile(
                Path.Combine(AppContext.BaseDirectory, "Schemas", name),
                null,
                new Uri($"schema:///{name}")
            )
        );
}
