using System.Globalization;
using System.Text;
using CsCheck;

namespace Coldpath.Tests.Sheets.Drawings;

/// <summary>
/// Power circuits at random, as text: series–parallel trees of three-pole devices, ways that leave and come back,
/// taps of one or two conductors, crossed phases, ties, rings and meshes by wire lists, star points, interlocks,
/// windings with both ends out.
/// </summary>
internal static class RandomPower
{
    /// <param name="first">Devices of each letter are numbered from here, so that others may have the numbers below.</param>
    private sealed class Writer(Random random, int first)
    {
        private readonly StringBuilder devices = new();
        private readonly StringBuilder chains = new();
        private readonly List<string> poles = [];
        private readonly Dictionary<char, int> counts = [];
        private int wires = 300;

        public string Write()
        {
            var sources = random.Next(1, 3);
            for (var i = 0; i < sources; i++)
                Chain();
            for (var i = random.Next(0, 4); i > 0; i--)
                Tap();
            for (var i = random.Next(0, 3); i > 0; i--)
                Way();
            for (var i = random.Next(0, 3); i > 0; i--)
                Tie();
            for (var i = random.Next(0, 2); i > 0; i--)
                Transformer();
            if (random.Next(3) == 0 && poles.Count(p => p[0] == 'K') > 1)
                Interlock();
            return $"{devices}\n{chains}";
        }

        private void Chain()
        {
            var source = Device('G', "generator", "400/230 V, available 6 kA", false);
            var (tree, end) = (Tree(3), End());
            chains.AppendLine(CultureInfo.InvariantCulture, $"{source}[L1, L2, L3] -> {tree} -> {end}");
        }

        private string Tree(int depth)
        {
            if (depth == 0 || random.Next(3) == 0)
                return Pole();
            var parts = Enumerable.Range(0, random.Next(2, 4)).Select(_ => Tree(depth - 1)).ToList();
            return random.Next(2) == 0 ? string.Join(" -> ", parts) : $"( {string.Join(" | ", parts)} )";
        }

        private string Pole()
        {
            var (letter, kind, ratings) = random.Next(7) switch
            {
                0 => ('Q', "disconnect", Placed("63 A, lockable")),
                1 => ('F', "fuse", Placed("three-pole 40 A class aM, interrupting 100 kA")),
                2 => ('B', "overload relay", "class 10, range 8 A to 12 A, set 11 A"),
                3 => ('U', "soft starter", Placed("85 A, three-leg, control supply 230 V")),
                4 => ('X', "distribution block", Placed("three-pole")),
                _ => ('K', "contactor", Placed("32 A AC-3, coil 230 V")),
            };
            return Device(letter, kind, ratings, true);
        }

        private string End()
        {
            if (random.Next(3) > 0)
            {
                var motor = Device('M', "motor", "5.5 kW 400 V, 11 A", false);
                return random.Next(3) == 0 ? $"{motor}[V, U, W]" : motor;
            }
            var open = Device('M', "motor", "six-lead 30 kW 400 V, 57 A", false);
            var star = Device('K', "contactor", "32 A AC-3, coil 230 V", false);
            chains.AppendLine(CultureInfo.InvariantCulture, $"{open}[W2, U2, V2] -> {star}");
            chains.AppendLine(CultureInfo.InvariantCulture, $"{star}:2/T1 -> {star}:4/T2 -> {star}:6/T3");
            return $"{open}[U1, V1, W1]";
        }

        private void Tap()
        {
            var fuse = Device('F', "fuse", "2 A", false);
            var lamp = Device('P', "lamp", "red \"on\"", false);
            var conductor = $"L{random.Next(1, 4)}";
            chains.AppendLine(
                CultureInfo.InvariantCulture,
                $"{Any()}[{conductor}] -> {fuse} -> {lamp} -> G{first}[N]"
            );
        }

        /// <summary>From below one device to below another, crossed or not: a ring, a mesh or a second way.</summary>
        private void Way()
        {
            var (from, to) = (Any(), Any());
            var target = random.Next(2) == 0 ? to : $"{to}[{Lines(to, random.Next(2) == 0)}]";
            var pole = Device('K', "contactor", Placed("18 A AC-3, coil 230 V"), false);
            chains.AppendLine(CultureInfo.InvariantCulture, $"{from} -> {pole} -> {target}");
        }

        private static string Lines(string device, bool crossed) =>
            (device[0], crossed) switch
            {
                ('F', false) => "1, 3, 5",
                ('F', true) => "5, 3, 1",
                ('X', false) => "L1, L2, L3",
                ('X', true) => "L3, L1, L2",
                (_, false) => "1/L1, 3/L2, 5/L3",
                _ => "3/L2, 5/L3, 1/L1",
            };

        private void Tie() =>
            chains.AppendLine(
                CultureInfo.InvariantCulture,
                $"wire {wires++}: {Terminal(Any())}, {Terminal(Any())}"
            );

        private string Terminal(string device) =>
            device[0] switch
            {
                'F' => $"{device}:{random.Next(1, 7)}",
                'X' => $"{device}:L{random.Next(1, 4)}",
                _ => random.Next(4) switch
                {
                    0 => $"{device}:1/L1",
                    1 => $"{device}:4/T2",
                    2 => $"{device}:5/L3",
                    _ => $"{device}:6/T3",
                },
            };

        private void Transformer()
        {
            var transformer = Device('T', "control transformer", "400 V to 230 V, 160 VA, X2 earthed", false);
            var fuse = Device('F', "fuse", Placed("4 A"), false);
            chains.AppendLine(CultureInfo.InvariantCulture, $"{Any()}[L1, L2] -> {transformer}[H1, H4]");
            chains.AppendLine(CultureInfo.InvariantCulture, $"{transformer}:X1 -> {fuse} -> node N{fuse}");
        }

        private void Interlock()
        {
            var contactors = poles.Where(p => p[0] == 'K').Take(2).ToList();
            Device('Y', "mechanical interlock", $"between {contactors[0]} and {contactors[1]}", false);
        }

        private string Any() => poles.Count == 0 ? $"G{first}" : poles[random.Next(poles.Count)];

        private string Placed(string ratings) =>
            random.Next(3) == 0 ? ratings : $"{ratings}, in \"cell {random.Next(1, 3)}\"";

        private string Device(char letter, string kind, string ratings, bool pole)
        {
            counts[letter] = counts.GetValueOrDefault(letter, first - 1) + 1;
            var tag = $"{letter}{counts[letter]}";
            devices.AppendLine(CultureInfo.InvariantCulture, $"{kind} {tag} {ratings}");
            if (pole)
                poles.Add(tag);
            return tag;
        }
    }

    public static Gen<string> Texts =>
        from head in RandomPanels.Heads
        from circuit in Circuits(1)
        select head + circuit;

    /// <summary>Devices and chains alone.</summary>
    /// <param name="first">Devices of each letter are numbered from here.</param>
    public static Gen<string> Circuits(int first) =>
        from seed in Gen.Int[0, int.MaxValue - 1]
        select new Writer(new Random(seed), first).Write();
}
