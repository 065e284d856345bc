using Coldpath.Inspection.Checks;

namespace Coldpath.Inspection;

/// <summary>Every check there is, by code.</summary>
public static class Catalogue
{
    public static IReadOnlyList<Check> All { get; } =
    [
        new PhaseToPhaseShort(),
        new SuppliesParalleled(),
        new UnprotectedShort(),
        new RunsWithStopsPressed(),
        new EmergencyStopIgnored(),
        new StopIgnoredByWay(),
        new BypassDuringRamp(),
        new StarterHalfIsolated(),
        new RotationDiffers(),
        new IsolatorLeavesPole(),
        new ControllerLeavesPole(),
        new StopWithoutEffect(),
        new RestartByItself(),
        new WayWithoutShortCircuitDevice(),
        new WayWithoutOverload(),
        new OverloadTripIgnored(),
        new SectionWithoutIsolator(),
        new IsolatedByControllerOnly(),
        new LiveBehindMainIsolator(),
        new CoilNeverPulls(),
        new CoilNeverDrops(),
        new Chatter(),
        new RaceChangesRunning(),
        new MissingInterlock(),
        new CoilBlocked(),
        new CoilVoltageMismatch(),
        new EarthedConductorSwitched(),
        new ChannelBridged(),
        new SneakPath(),
        new SingleChannelEmergencyStop(),
        new UnearthedControlUnwatched(),
        new UnconnectedPole(),
        new DuplicateTag(),
        new ContactUsedTwice(),
        new DeviceUnwired(),
        new IntentRefuted(),
        new IntentVacuous(),
        new WaiverUnused(),
        new SingleFailureStartsMotor(),
        new SingleFailureDefeatsStop(),
        new EarthFaultInControl(),
        new ShortedSemiconductor(),
        new EnergiseToTrip(),
        new HiddenFailure(),
        new ShuntTripWithoutSupply(),
    ];

    /// <summary>The check of a code or name; null when there is none.</summary>
    public static Check? Find(string codeOrName) =>
        All.FirstOrDefault(c =>
            c.Card.Name == codeOrName
            || string.Equals(c.Card.Code, codeOrName, StringComparison.OrdinalIgnoreCase)
        );
}
