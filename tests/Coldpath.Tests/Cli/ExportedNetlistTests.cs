using System.Text.Json.Nodes;
using Coldpath.Tests.Circuit.Comparison;
using Coldpath.Tests.Sheets;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Cli;

/// <summary>With what is exported the plain interpreter finds the failures that the tool finds.</summary>
public sealed class ExportedNetlistTests : IDisposable
{
    private const string Hazard = "never P1 runs and S1 pressed, when settled";

    private readonly Desk desk = new Desk().With(
        "lamp.panel",
        $"""
        panel "Held lamp"
          rules  IEC
          system 230 V 1-phase 50 Hz, TN-S

        supply      MAINS 230 V, available 1 kA
        push button S1    stop
        push button S2    start
        relay       K1    coil 230 V
        lamp        P1    green "on"

        MAINS[L] -> rail 1
        MAINS[N] -> rail 2
        rung 1  1 -> S1 -> ( S2 | NO K1 ) -> coil K1 -> 2
        rung 2  1 -> NO K1 -> P1 -> 2

        {Hazard}
        """
    );

    public void Dispose() => desk.Dispose();

    [Fact]
    public void It_fits_its_schema() => Schemas.ShouldFit(Exported(), "netlist.schema.json");

    [Fact]
    public void It_is_enough_to_recompute_failures()
    {
        using var interpreter = new Interpreter();
        var exported = JsonNode.Parse(Exported())!;
        var theirs = interpreter.Ask("failures", exported.ToJsonString(), "\"failures\":1,\"index\":0");
        var mine = Json("failures", "lamp.panel", Hazard, "--failures", "1");
        Sets(mine["sets"]!)
            .Should()
            .Contain(["K1.jams", "S1.weld11-12"])
            .And.BeEquivalentTo(Sets(JsonNode.Parse(theirs.GetProperty("sets").GetRawText())!));
    }

    [Fact]
    public void It_is_enough_to_recompute_what_shows()
    {
        using var interpreter = new Interpreter();
        var exported = JsonNode.Parse(Exported())!;
        var theirs = interpreter.Ask("revealed", exported.ToJsonString());
        foreach (var failure in Json("failures", "lamp.panel")["failures"]!.AsArray())
            theirs
                .GetProperty(failure!["name"]!.GetValue<string>())
                .GetString()
                .Should()
                .Be(failure["disclosure"]!.GetValue<string>(), failure["name"]!.GetValue<string>());
    }

    private string Exported()
    {
        var ran = desk.Run("export", "netlist", "lamp.panel");
        ran.Error.Should().BeEmpty();
        return ran.Out;
    }

    private JsonNode Json(params string[] arguments) =>
        JsonNode.Parse(desk.Run([.. arguments, "--format", "json"]).Out)!;

    private static IEnumerable<string> Sets(JsonNode sets) =>
        sets.AsArray()
            .Select(set => string.Join(' ', set!.AsArray().Select(name => name!.GetValue<string>())));
}
