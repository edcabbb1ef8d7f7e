package dev.runnel.verification.simulation;

/** Short orders for tests. */
final class Orders {
    static final int DAYS = 40;

    private Orders() {}

    static SiteOrder sound(long seed, boolean rough) {
        return new SiteOrder(seed, rough, DAYS, 0.04, Trait.PLAIN, false, Fault.NONE);
    }

    static SiteOrder with(long seed, boolean rough, FaultKind kind, double severity, double ramp) {
        return sound(seed, rough).withFault(new Fault(kind, severity, 20.3, ramp, Double.POSITIVE_INFINITY, 5));
    }
}
