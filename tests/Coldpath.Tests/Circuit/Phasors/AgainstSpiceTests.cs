using Coldpath.Circuit.Conduction;
using Coldpath.Circuit.Phasors;
using Coldpath.Circuit.States;
using Coldpath.Wiring;
using FluentAssertions;
using Xunit;
using Xunit.Abstractions;

namespace Coldpath.Tests.Circuit.Phasors;

/// <summary>The solver against ngspice on a hundred random circuits.</summary>
public class AgainstSpiceTests(ITestOutputHelper output)
{
    private const int Circuits = 100;
    private const double MayPull = 0.50;
    private const double MustPull = 0.85;

    [Fact]
    public void Volts_and_decisions_are_those_of_ngspice()
    {
        int pulling = 0,
            staying = 0,
            near = 0,
            compared = 0,
            direct = 0;
        for (var seed = 1; seed <= Circuits; seed++)
        {
            var circuit = SneakCircuit.Of(seed);
            var network = new Network(circuit.Netlist, new StateSpace(circuit.Netlist));
            var state = network.States.Rest;
            var readings = new Readings(network, state);
            var spice = SpiceDeck.Run(circuit);
            readings.Refused.Should().BeNull($"circuit {seed} is solved");
            foreach (var (net, volts) in spice.Where(r => r.Key != SneakCircuit.Coil))
                if (readings.Volts(net) is { } ours)
                {
                    compared++;
                    ours.Should().BeApproximately(volts, Tolerance(circuit), $"net {net} of circuit {seed}");
                }
            var coil = spice[SneakCircuit.Coil];
            readings
                .Volts(SneakCircuit.A, SneakCircuit.B)
                .Should()
                .BeApproximately(coil, Tolerance(circuit), $"the coil of circuit {seed}");
            var judged = Judged(network);
            judged.Unknown.Should().BeNull();
            judged.Low.Should().BeLessThanOrEqualTo(coil + Tolerance(circuit), $"circuit {seed}");
            judged.High.Should().BeGreaterThanOrEqualTo(coil - Tolerance(circuit), $"circuit {seed}");
            direct += circuit.Direct ? 1 : 0;
            var part = coil / circuit.Rated;
            if (Math.Abs(part - MayPull) < 0.01 || Math.Abs(part - MustPull) < 0.01)
            {
                near++;
                continue;
            }
            _ = part < MayPull ? staying++ : pulling++;
            // A diode's drop is a band of its own, which may reach across a threshold.
            if (!HasDiode(circuit))
                Decision(judged, circuit.Rated).Should().Be(Decision(part), $"circuit {seed}");
            else
                Decision(readings.Volts(SneakCircuit.A, SneakCircuit.B)!.Value / circuit.Rated)
                    .Should()
                    .Be(Decision(part));
        }
        output.WriteLine(
            $"{Circuits} circuits ({direct} on direct voltage), {compared} nets, {pulling} pulling, {staying} not, {near} near a threshold"
        );
        pulling.Should().BeGreaterThanOrEqualTo(20);
        staying.Should().BeGreaterThanOrEqualTo(20);
        compared.Should().BeGreaterThan(300);
        direct.Should().BeInRange(30, 70);
    }

    private static CoilVoltage Judged(Network network)
    {
        var (a, b) = (network.Mesh.Net(SneakCircuit.A), network.Mesh.Net(SneakCircuit.B));
        return new CoilVoltages().Of(CoilCircuit.Around(new(network, network.States.Rest), a, b), a, b);
    }

    private static bool HasDiode(SneakCircuit circuit) =>
        circuit.Netlist.Elements.Any(e => e.Type == ElementType.Diode);

    private static double Tolerance(SneakCircuit circuit) => 0.001 * circuit.Rated;

    private static string Decision(CoilVoltage volts, double rated) =>
        volts.High < MayPull * rated ? "stays out"
        : volts.Low >= MustPull * rated ? "pulls in"
        : "may pull in";

    private static string Decision(double part) =>
        part < MayPull ? "stays out"
        : part >= MustPull ? "pulls in"
        : "may pull in";
}
