using System.Diagnostics;
using System.Text;

namespace Coldpath.Tests.Circuit.Comparison;

/// <summary>An SMT solver's answers to a series of questions about one set of definitions.</summary>
internal static class Solver
{
    /// <summary>For each condition, whether some assignment satisfies it.</summary>
    /// <param name="definitions">What the conditions are about.</param>
    /// <param name="conditions">Each asked by itself.</param>
    /// <param name="inlined">Put definitions in where they are used: of use where many are used but once.</param>
    public static IReadOnlyList<bool> Satisfiable(
        string definitions,
        IEnumerable<string> conditions,
        bool inlined = false
    )
    {
        var first = inlined ? "simplify solve-eqs" : "simplify";
        var script = new StringBuilder("(set-logic QF_UF)\n").Append(definitions);
        foreach (var condition in conditions)
            script.Append($"(push)(assert {condition})(check-sat-using (then {first} sat))(pop)\n");
        return [.. Run(script.ToString()).Select(Answer)];
    }

    private static bool Answer(string line) =>
        line switch
        {
            "sat" => true,
            "unsat" => false,
            _ => throw new InvalidOperationException($"z3: {line}"),
        };

    private static string[] Run(string script)
    {
        var start = new ProcessStartInfo("z3")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        start.ArgumentList.Add("-in");
        using var solver = Process.Start(start)!;
        var answers = solver.StandardOutput.ReadToEndAsync();
        solver.StandardInput.Write(script);
        solver.StandardInput.Close();
        return answers.GetAwaiter().GetResult().Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
