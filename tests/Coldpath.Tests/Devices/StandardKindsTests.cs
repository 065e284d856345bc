using Coldpath.Devices;
using Coldpath.Findings;
using Coldpath.Notation;
using Coldpath.Notation.Syntax;
using FluentAssertions;
using Xunit;

namespace Coldpath.Tests.Devices;

public class StandardKindsTests
{
    public static TheoryData<string> Names => [.. KindLibrary.Standard.Names];

    /// <summary>Each kind in as many forms as its <c>if</c>s tell apart.</summary>
    public static readonly string[] Lines =
    [
        "supply MAINS 480Y/277 V, available 18 kA",
        "supply MAINS 240 V, high-leg delta, high leg L1",
        "supply MAINS 240 V, high-leg delta",
        "supply MAINS 240 V, high-leg delta, high leg L3",
        "supply MAINS 480 V, corner-earthed delta",
        "supply MAINS 480 V, resistance-earthed, limited",
        "supply MAINS 480 V, unearthed",
        "supply MAINS 400/230 V, TN-S",
        "supply MAINS 400/230 V, TN-C",
        "supply MAINS 400/230 V, TN-C-S",
        "supply MAINS 400/230 V, TT",
        "supply MAINS 400/230 V, IT",
        "supply MAINS 240/120 V, phases 1, earthed centre tap",
        "supply MAINS 230 V, 1-phase, TN-S",
        "supply MAINS 230 V, 1-phase, TN-C",
        "supply MAINS 230 V, 1-phase, TT",
        "supply MAINS 230 V, 1-phase, IT",
        "supply MAINS 110 V DC, dc, TN-S",
        "supply MAINS 24 V, dc, unearthed, SELV",
        "generator G1 480 V, limited, synchronised with MAINS",
        "control supply EXT 120 V, origin \"lighting panel\"",
        "control supply EXT 24 V DC, PELV",
        "control supply EXT 24 V DC, SELV",
        "control supply EXT 230 V, unearthed",
        "disconnect Q1 200 A, lockable, visible break, door interlocked",
        "fused disconnect Q1 100 A, fuses 80 A, class J, interrupting 200 kA, lockable",
        "breaker Q1 50 A, magnetic-only, two-pole, interrupting 14 kA",
        "breaker Q2 16 A, motor protection set 8.5 A, lockable, interrupting 50 kA",
        "fuse F1 three-pole 175 A class J, interrupting 200 kA",
        "fuse F10 2 A",
        "distribution block XD1 three-pole",
        "terminal strip X1",
        "current transformer T5 100 A to 5 A, three-pole",
        "contactor K1 140 A AC-3, coil 120 V, mirror contacts",
        "contactor K1 two-pole 32 A AC-1, coil 24 V DC",
        "overload relay F3 class 10, range 90 A to 150 A, set 96 A",
        "overload relay F3 electronic, class 10A, set 3.4 A, automatic reset, earth fault",
        "overload relay F3 electronic, class 30, set 4 A, current transformers T5 and T6, phase loss, earth fault",
        "protection relay B1 500 V, phase sequence",
        "protection relay B1 400 V, phase loss",
        "protection relay B1 400 V, unbalance",
        "protection relay F5 earth fault, set 0.3 A, auxiliary supply 120 V",
        "soft starter U1 124 A, three-leg, overload class 10 set 96 A, control supply 120 V",
        "soft starter U1 85 A, internal bypass, control supply 230 V",
        "soft starter U1 62 A, two-leg, soft stop 5 s, control supply 24 V DC",
        "soft starter U1 52 A, two-leg, internal bypass, soft stop 10 s, control supply 120 V, input 24 V DC, phase loss, earth fault, fail-safe trip",
        "drive U1 65 A, overload class 10 set 62 A, discharge 300 s",
        "drive U1 65 A, control supply 120 V, input 120 V, enable input, safe torque off, brake chopper, phase loss, earth fault, fail-safe trip",
        "drive U1 65 A, enable input",
        "drive U1 65 A, safe torque off, input 24 V DC",
        "control transformer T1 480 V to 120 V, 350 VA, X2 earthed",
        "control transformer T1 400 V to 24 V, X1 earthed, PELV",
        "relay K0 coil 120 V, linked contacts",
        "relay K0 coil 24 V DC",
        "on-delay timer K4 10 s, coil 120 V",
        "off-delay timer K5 10 s, coil 120 V",
        "safety relay K5 230 V, feedback loop",
        "safety relay K5 24 V DC, reset automatic",
        "selector S1 HAND | OFF | AUTO",
        "key selector S2 NORMAL | BYPASS, rest NORMAL",
        "push button S3 \"control on\"",
        "push button S1 stop",
        "emergency stop S0",
        "level contact B1 closes on high water",
        "level contact B2 opens on \"low water\"",
        "pressure contact B3 closes on low pressure",
        "flow contact B4 opens on no flow",
        "temperature contact B5 opens on winding hot",
        "limit switch B6 opens at gate open",
        "lamp P1 red \"running\"",
        "horn P4",
        "transfer switch TS1 100 A, manual",
        "transfer switch TS1 100 A, automatic, poles 4",
        "transfer switch TS1 100 A, manual, transition closed",
        "transfer switch TS1 100 A, automatic, transition closed",
        "capacitor C1 12 kvar 480 V, discharge 60 s",
        "capacitor C1 single-phase 25 uF 230 V",
        "autotransformer T2 100 hp 480 V, tap 65 %",
        "starting resistor R1 2 ohm",
        "line reactor R2 3 %",
        "mechanical interlock MI1 between K1 and K2",
        "reversing pair RP1 between K1 and K2",
        "speed pair SP1 between K1 and K2",
        "change-over pair CP1 between K1 and K2",
        "earth XPE",
        "earth XPE electrode",
        "motor M1 75 hp 460 V, 96 A, service factor 1.15, stall 12 s hot",
        "motor M1 permanent magnet, 5 kW 400 V",
        "motor M1 six-lead 30 kW 400 V, 57 A",
        "motor M1 six-lead part winding, 30 kW",
        "motor M1 nine-lead 10 hp",
        "motor M1 twelve-lead 100 hp 460 V",
        "motor M1 two-speed 4.4 kW 400 V, 9.2 A, 1450 rpm, low speed 720 rpm",
        "motor M1 two-speed, tapped winding, 6.5 kW 400 V, 14 A, 1460 rpm, low speed 730 rpm",
        "motor MTR phases 1, 5 hp 230 V, 26 A",
        "breaker Q1 50 A, shunt trip 120 V, undervoltage release 230 V",
        "manual motor starter Q1 4 kW, range 6.3 A to 10 A, set 8.5 A, class 10, phase loss, lockable, interrupting 50 kA",
        "manual motor starter Q1 9 A, shunt trip 24 V DC, undervoltage release 230 V",
        "residual-current device F1 40 A, sensitivity 30 mA, type A, lockable",
        "residual-current device F1 25 A, poles 2",
        "earth-fault relay F5 300 mA, delay 0.5 s, auxiliary supply 230 V",
        "earth-fault relay F5 30 mA, poles 4, automatic reset, fail-safe trip",
        "insulation monitor F6 50 kohm, auxiliary supply 230 V",
        "insulation monitor F6 100 kohm, two conductors, automatic reset",
        "phase-sequence relay B1 400 V",
        "phase-sequence relay B1 400 V, phase loss",
        "thermistor B7 130 degC \"stator\"",
        "thermistor relay F7 auxiliary supply 230 V",
        "thermistor relay F7 auxiliary supply 24 V DC, automatic reset",
        "latched contactor K1 100 A AC-1, coil 120 V",
        "latched contactor K1 two-pole 32 A, coil 24 V DC, mirror contacts",
        "ups G2 230 V, 1.5 kVA",
        "ups G2 230 V, battery 48 V DC, backfeed protection, common neutral, remote off",
        "ups G2 400 V, phases 3, 20 kVA, battery 240 V DC",
        "ups G2 400 V, phases 3, backfeed protection, common neutral",
        "ups G2 24 V DC, PELV, battery 24 V DC, common neutral",
        "ups G2 24 V DC, backfeed protection, autonomy 10 min",
        "power supply G3 24 V DC, 10 A, PELV, minus earthed, ready contact",
        "power supply G3 24 V DC, input 230 V, bidirectional",
        "power supply G3 24 V DC, phases 3, ready contact, paralleled with G4",
        "power supply G3 24 V DC, phases 3, bidirectional",
        "input card A1 24 V DC, inputs 16",
        "output card A2 230 V",
        "output card A2 24 V DC, electronic, outputs 4, auxiliary supply 24 V DC",
        "busbar W1 400 A, withstand 25 kA",
        "cable W2 25 m, 35 mm2",
        "cable W2 80 ft, 6 AWG, cores 4, earth core",
        "knife terminal X5",
        "knife terminal X5 poles 2, suitable for isolation, lockable",
        "plug and socket X6 32 A 400 V",
        "plug and socket X6 16 A 230 V, poles 2, earth contact, lockable",
        "door switch B8 \"door 1\"",
        "door switch B8 positive opening",
        "zero-speed switch B9",
        "zero-speed switch B9 closes at standstill",
        "push-to-test lamp P2 red \"fault\"",
        "hour meter P5 230 V",
        "space heater E1 50 W 230 V",
        "space heater E1 2 kW 400 V, phases 3",
        "braking resistor R3 40 ohm, 500 W",
        "braking resistor R3 40 ohm, thermal contact",
        "brake Q8 180 V DC, torque 20 Nm",
        "brake Q8 180 V DC, release contact",
        "brake rectifier T5 400 V to 180 V",
        "surge arrester F9 275 V, discharge current 20 kA, poles 4",
        "surge arrester F9 275 V, type 2, signal contact",
        "diode R8 600 V, 3 A",
        "suppressor R9 varistor",
        "suppressor R9 diode",
        "output filter R4 30 A",
        "output filter R4 sine, 30 A",
        "wound-rotor motor M1 75 kW 400 V, 135 A, rotor voltage 320 V, rotor current 150 A",
        "dc motor M1 2.2 kW 180 V",
        "dc motor M1 shunt, 5 kW 220 V",
        "dc motor M1 series, 5 kW 220 V",
        "dc motor M1 separate, 5 kW 400 V, 1500 rpm",
    ];

    public static TheoryData<string> Forms => [.. Lines];

    [Theory]
    [MemberData(nameof(Names))]
    public void ReadsAndIsLaidOut(string name)
    {
        var text = KindLibrary.Standard.TextOf(name)!;
        var source = new SourceText(name, text);
        var parsed = PanelParser.Parse(source);

        parsed.Findings.Should().BeEmpty();
        PanelFormatter.Format(parsed.Panel, source).Should().Be(text);
        parsed.Panel.Statements.Should().ContainSingle().Which.Should().BeOfType<KindSyntax>();
        var kind = KindCompiler.Describe(KindLibrary.Standard.Find(name)!);
        kind.Name.Should().Be(name);
        kind.Means.Should().NotBeNullOrWhiteSpace();
        kind.Letter.Should().NotBeNullOrEmpty();
        kind.Symbol.Should().NotBeNullOrEmpty();
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void MakesABlueprint(string line)
    {
        var made = Declared.Instance(line);

        made.Findings.Should().BeEmpty();
        Soundness.Check(made.Blueprint!);
    }

    [Fact]
    public void EveryKindIsTried() =>
        KindLibrary
            .Standard.Names.Should()
            .OnlyContain(n => Lines.Any(l => l.StartsWith(n + " ", StringComparison.Ordinal)));
}
