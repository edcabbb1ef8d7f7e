package dev.runnel.verification.simulation;

/** Short orders for tests. */
final class Orders {
    static final int DAYS = 40;

    private Orders() {}

    static SiteOrder sound(long seed, Make make) {
        return new SiteOrder(seed, make, DAYS, 0.04, Trait.PLAIN, false, Fault.NONE);
    }

    static SiteOrder with(long seed, Make make, FaultKind kind, double severity, double ramp) {
        return sound(seed, make).withFault(new Fault(kind, severity, 20.3, ramp, Double.POSITIVE_INFINITY, 5));
    }
}
