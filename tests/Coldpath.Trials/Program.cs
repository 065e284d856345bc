using Coldpath.Trials;

var trials = new SortedDictionary<string, Action>(StringComparer.Ordinal)
{
    ["conduction"] = ConductionTrial.Run,
    ["diagrams"] = DiagramTrial.Run,
};
var chosen = args.Length == 0 ? [.. trials.Keys] : args;
foreach (var name in chosen)
    if (trials.TryGetValue(name, out var run))
        run();
    else
        Console.Error.WriteLine($"no trial {name}; there are {string.Join(", ", trials.Keys)}");
return chosen.All(trials.ContainsKey) ? 0 : 2;
