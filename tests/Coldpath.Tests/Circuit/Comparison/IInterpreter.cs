using System.Text.Json;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>Who answers as the interpreter does.</summary>
internal interface IInterpreter
{
    /// <param name="operation">"table", "isolate", "intent".</param>
    /// <param name="netlist">The panel.</param>
    /// <param name="more">Further members of the request, as JSON text.</param>
    JsonElement Ask(string operation, Netlist netlist, string? more = null);
}
