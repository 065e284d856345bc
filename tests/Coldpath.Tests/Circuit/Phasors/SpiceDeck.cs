using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Phasors;

/// <summary>A sneak circuit as a deck for ngspice, written from the netlist alone, and what ngspice reads in it.</summary>
internal static partial class SpiceDeck
{
    /// <summary>Volts by net to earth, and across the coil under its id; magnitudes.</summary>
    public static IReadOnlyDictionary<string, double> Run(SneakCircuit circuit)
    {
        var start = new ProcessStartInfo("ngspice", "-b")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        process.StandardInput.Write(TextOf(circuit));
        process.StandardInput.Close();
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var readings = Reading()
            .Matches(output)
            .ToDictionary(
                m => m.Groups["name"].Value == "coil" ? SneakCircuit.Coil : m.Groups["name"].Value,
                m => double.Parse(m.Groups["volts"].Value, CultureInfo.InvariantCulture)
            );
        if (readings.Count == 0)
            throw new InvalidOperationException($"{output}\n{errors.Result}\n{TextOf(circuit)}");
        return readings;
    }

    private static string TextOf(SneakCircuit circuit)
    {
        var netlist = circuit.Netlist;
        var deck = new StringBuilder($"* {netlist.Panel}\n.options rshunt=1e12 reltol=1e-6\n");
        deck.Append(
            "* ideal but for the drop, which is a source of its own\n.model ideal d(is=1e-9 n=0.01)\n"
        );
        for (var i = 0; i < netlist.Elements.Count; i++)
            Write(deck, netlist, netlist.Elements[i], i);
        for (var s = 0; s < netlist.Supplies.Count; s++)
        for (var c = 0; c < 2; c++)
            Write(deck, circuit, netlist.Supplies[s].Conductors[c], $"{s}_{c}", $"star{s}");
        foreach (var t in netlist.Converters)
            Write(deck, t);
        deck.Append(".control\nset numdgt=10\n");
        deck.Append(circuit.Direct ? "op\n" : F($"ac lin 1 {netlist.Frequency} {netlist.Frequency}\n"));
        var nets = netlist.Elements.SelectMany(e => new[] { e.A, e.B }).Where(n => n != "PE").Distinct();
        foreach (var net in nets)
            deck.Append(F($"let r = mag(v({net}))\necho reading {net} $&r\n"));
        deck.Append(F($"let r = mag(v({SneakCircuit.A})-v({SneakCircuit.B}))\necho reading coil $&r\n"));
        return deck.Append("quit\n.endc\n.end\n").ToString();
    }

    private static void Write(StringBuilder deck, Netlist netlist, Element element, int i)
    {
        var (a, b) = (Node(element.A), Node(element.B));
        if (element.Closed == Expression.False)
            deck.Append(F($"Roff{i} {a} {b} 1e15\n"));
        else if (element.Type == ElementType.Diode)
            deck.Append(F($"Vd{i} {a} d{i} 0.7\nDd{i} d{i} {b} ideal\n"));
        else if (element.Ohms.Reactance == 0)
            deck.Append(F($"R{i} {a} {b} {Math.Max(element.Ohms.Resistance, 0.001)}\n"));
        else
            deck.Append(
                F(
                    $"R{i} {a} m{i} {element.Ohms.Resistance}\nL{i} m{i} {b} {element.Ohms.Reactance / (2 * Math.PI * netlist.Frequency)}\n"
                )
            );
    }

    private static void Write(
        StringBuilder deck,
        SneakCircuit circuit,
        SupplyConductor conductor,
        string mark,
        string star
    ) =>
        deck.Append(
            F(
                $"V{mark} s{mark} {star} {(circuit.Direct ? F($"dc {conductor.Volts}") : F($"dc 0 ac {conductor.Volts} {conductor.Degrees}"))}\nR{mark} s{mark} {Node(conductor.Net)} 0.001\n"
            )
        );

    /// <summary>Two controlled sources: volts from the second winding to the first, amperes the other way.</summary>
    private static void Write(StringBuilder deck, Converter t)
    {
        var (first, second) = (t.Windings[0], t.Windings[1]);
        deck.Append(
            F(
                $"Rt {Node(first[0])} t1 0.001\nVt t1 t2 0\nEt t2 {Node(first[1])} {Node(second[0])} {Node(second[1])} {t.Ratio}\nFt {Node(second[1])} {Node(second[0])} Vt {t.Ratio}\n"
            )
        );
    }

    private static string Node(string net) => net == "PE" ? "0" : net;

    private static string F(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^reading (?<name>\S+) (?<volts>\S+)\s*$", RegexOptions.Multiline)]
    private static partial Regex Reading();
}
