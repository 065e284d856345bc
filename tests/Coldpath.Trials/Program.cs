using System.Globalization;
using Coldpath.Trials;
using Coldpath.Trials.Sites;

return args switch
{
    ["fuzz", "parser", ..] => ParserFuzz.Run(Number(2, 200_000), Number(3, 1)),
    ["fuzz", "binder", ..] => BinderFuzz.Run(Number(2, 50_000), Number(3, 1)),
    ["limits", "parser"] => LargeInputs.Run(),
    ["sites", .. var sizes] => SiteTrial.Run(sizes),
    ["start", .. var commands] => StartTrial.Run(commands),
    _ => Trials(),
};

int Number(int at, int otherwise) =>
    args.Length > at ? int.Parse(args[at], CultureInfo.InvariantCulture) : otherwise;

int Trials()
{
    var trials = new SortedDictionary<string, Action>(StringComparer.Ordinal)
    {
        ["check"] = CheckTrial.Run,
        ["conduction"] = ConductionTrial.Run,
        ["diagrams"] = DiagramTrial.Run,
        ["draw"] = DrawTrial.Run,
        ["failures"] = FailureTrial.Run,
        ["meshes"] = MeshTrial.Run,
    };
    var chosen = args.Length == 0 ? [.. trials.Keys] : args;
    foreach (var name in chosen)
        if (trials.TryGetValue(name, out var run))
            run();
        else
            Console.Error.WriteLine($"no trial {name}; there are {string.Join(", ", trials.Keys)}");
    return chosen.All(trials.ContainsKey) ? 0 : 2;
}
