using System.Globalization;
using Coldpath.Trials;

return args switch
{
    ["fuzz", "parser", ..] => ParserFuzz.Run(Number(2, 200_000), Number(3, 1)),
    ["limits", "parser"] => LargeInputs.Run(),
    _ => 2,
};

int Number(int at, int otherwise) =>
    args.Length > at ? int.Parse(args[at], CultureInfo.InvariantCulture) : otherwise;
