using Coldpath.Wiring;

namespace Coldpath.Tests.Circuit.Sequence;

/// <summary>Small control circuits that several tests look at.</summary>
internal static class Boards
{
    /// <summary>STOP, START with holding contact, contactor, motor.</summary>
    public static Board ThreeWire(string holdsFrom = "c1") =>
        new Board()
            .Button("S0", ControlUse.Stop)
            .Button("S1", ControlUse.Start)
            .Contact("L1", "c1", "S0", "released")
            .Contact("c1", "c2", "S1", "pressed")
            .Contact(holdsFrom, "c2", "K1", "in")
            .Coil("K1", "c2", "N")
            .Poles("L", "u", "K1", "in")
            .Motor("M1", "u");

    /// <summary>A contactor that follows a switch.</summary>
    public static Board TwoWire(Board? board = null) =>
        (board ?? new Board())
            .Switch("S1", "off", "on", ControlUse.Start)
            .Contact("L1", "c1", "S1", "on")
            .Coil("K1", "c1", "N")
            .Poles("L", "u", "K1", "in")
            .Motor("M1", "u");

    /// <summary>
    /// Reversing starter behind fuses: common stop, holding contacts, and the interlock contacts asked for, each the
    /// other contactor's break contact ahead of the coil.
    /// </summary>
    public static Board Reversing(bool interlockAtForward, bool interlockAtReverse)
    {
        var board = new Board()
            .Button("S0", ControlUse.Stop)
            .Button("S1", ControlUse.Start)
            .Button("S2", ControlUse.Start)
            .Contact("L1", "c0", "S0", "released")
            .Contact("c0", "f1", "S1", "pressed")
            .Contact("c0", "f1", "K1", "in")
            .Contact("c0", "r1", "S2", "pressed")
            .Contact("c0", "r1", "K2", "in");
        if (interlockAtForward)
            board.Contact("f1", "f2", "K2", "out");
        if (interlockAtReverse)
            board.Contact("r1", "r2", "K1", "out");
        return board
            .Coil("K1", interlockAtForward ? "f2" : "f1", "N")
            .Coil("K2", interlockAtReverse ? "r2" : "r1", "N")
            .Fuse("F1", "L1", "p1")
            .Fuse("F2", "L2", "p2")
            .Fuse("F3", "L3", "p3")
            .Poles("p", "u", "K1", "in")
            .Poles("p", "u", "K2", "in", order: "321")
            .Motor("M1", "u");
    }
}
