using System.Diagnostics;
using System.Text.Json;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>The page's plain interpreter of the netlist, in one Node process that stays open: a line in, a line out.</summary>
internal sealed class Interpreter : IInterpreter, IDisposable
{
    private readonly Process node;

    public Interpreter()
    {
        var start = new ProcessStartInfo("node")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        start.ArgumentList.Add(Path.Combine(Viewer(), "batch.mjs"));
        node = Process.Start(start)!;
    }

    /// <summary>Everything that holds in every assignment.</summary>
    public JsonElement Table(Netlist netlist) => Ask("table", netlist);

    public JsonElement Ask(string operation, Netlist netlist, string? more = null) =>
        Ask(operation, NetlistJson.ToText(netlist), more);

    /// <param name="operation">"table", "isolate", "intent".</param>
    /// <param name="netlist">The panel as JSON on one line.</param>
    /// <param name="more">Further members of the request, as JSON text.</param>
    public JsonElement Ask(string operation, string netlist, string? more = null)
    {
        var extra = more is null ? "" : $",{more}";
        node.StandardInput.WriteLine($$"""{"op":"{{operation}}","netlist":{{netlist}}{{extra}}}""");
        node.StandardInput.Flush();
        var line =
            node.StandardOutput.ReadLine() ?? throw new InvalidOperationException("the interpreter ended");
        var answer = JsonDocument.Parse(line).RootElement;
        if (answer.TryGetProperty("error", out var error))
            throw new InvalidOperationException($"interpreter: {error.GetString()}");
        return answer;
    }

    public void Dispose()
    {
        node.StandardInput.Close();
        if (!node.WaitForExit(2000))
            node.Kill();
        node.Dispose();
    }

    private static string Viewer()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "viewer", "batch.mjs")))
                return Path.Combine(at.FullName, "viewer");
        throw new DirectoryNotFoundException("viewer/batch.mjs");
    }
}
