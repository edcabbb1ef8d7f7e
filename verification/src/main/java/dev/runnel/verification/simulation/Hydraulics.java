package dev.runnel.verification.simulation;

import org.apache.commons.math3.util.FastMath;

/** Makes the water of a site. */
final class Hydraulics {
    private static final double MOON_HOURS = 12.4206;
    private static final double SUN_HOURS = 12;

    private final SiteOrder order;
    private final Grid grid;
    private final Nature nature;
    private final Law law;

    Hydraulics(SiteOrder order, Grid grid, Nature nature, Law law) {
        this.order = order;
        this.grid = grid;
        this.nature = nature;
        this.law = law;
    }

    Water water() {
        double usualDepth = law.referenceDepth();
        double usualFlow = law.flow(usualDepth);
        double[] rain = nature.rain(grid).onto(grid.minutes(), grid.size());
        double[] dry = nature.dryFlow(grid, usualFlow);
        if (order.trait() == Trait.SEASON) {
            Season season = Season.of(order.seed());
            for (int i = 0; i < dry.length; i++) {
                dry[i] += usualFlow * season.at(grid.days(i));
            }
        }
        double[] storm = nature.stormFlow(grid, rain, usualFlow);
        double[] scatter = nature.scatter(grid, order.scatter(), dry, storm);
        double[] flow = new double[grid.size()];
        for (int i = 0; i < flow.length; i++) {
            flow[i] = flow(dry[i] + storm[i], usualFlow, grid.days(i));
        }
        if (order.trait() == Trait.PUMPED) {
            flow = pumped(flow, usualFlow);
        }
        double[] tide = order.trait() == Trait.TIDAL ? tide(usualDepth) : new double[grid.size()];
        double[] bed = new double[grid.size()];
        double[] depth = new double[grid.size()];
        double[] velocity = new double[grid.size()];
        double[] shift = new double[grid.size()];
        Backflow backflow = new Backflow(order);
        Obstruction obstruction = obstruction();
        Fault fault = order.fault();
        for (int i = 0; i < flow.length; i++) {
            double strength = fault.strength(grid.days(i));
            bed[i] = fault.kind() == FaultKind.SEDIMENT ? fault.severity() * strength * usualDepth : 0;
            double y = law.depthOverBed(flow[i] * FastMath.exp(-scatter[i]), bed[i]);
            if (fault.kind().isObstruction()) {
                double there = fault.kind() == FaultKind.OBSTRUCTION_GONE && grid.days(i) < fault.begin()
                        ? 1
                        : fault.kind() == FaultKind.OBSTRUCTION_GONE ? 0 : strength;
                if (there > 0) {
                    y = obstruction.depth(y, flow[i], fault.severity() * there, usualDepth, usualFlow);
                }
            }
            if (tide[i] > 0) {
                y = FastMath.pow(FastMath.pow(y, 4) + FastMath.pow(tide[i], 4), 0.25);
            }
            double back = fault.kind() == FaultKind.REVERSE_FLOW ? backflow.strength(grid.days(i)) : 0;
            if (back > 0) {
                y *= 1 + fault.severity() * back;
                flow[i] *= 1 - 1.6 * back;
            }
            depth[i] = y;
            double area = law.pipe().area(y) - law.pipe().area(bed[i]);
            velocity[i] = area > 0 ? flow[i] / area : 0;
            shift[i] = velocity[i] > 0 ? FastMath.log(velocity[i] / law.velocity(y)) - scatter[i] : Double.NaN;
        }
        return new Water(flow, depth, velocity, shift, bed, rain, dry, usualDepth);
    }

    private double flow(double flow, double usual, double day) {
        Fault fault = order.fault();
        return switch (fault.kind()) {
            case LESS_WATER -> flow * (1 - fault.severity() * fault.strength(day));
            case MORE_WATER -> flow + usual * fault.severity() * fault.strength(day);
            default -> flow;
        };
    }

    private Obstruction obstruction() {
        if (order.fault().kind() == FaultKind.BLOCKAGE_DROWNED) {
            return Obstruction.DAM;
        }
        return Obstruction.values()[Draws.of(order.seed(), "obstruction").below(3)];
    }

    /** A well upstream fills and is emptied by strokes; a reach of sewer smooths them. No water is lost. */
    private double[] pumped(double[] inflow, double usual) {
        Draws draws = Draws.of(order.seed(), "pumps");
        double rate = usual * draws.uniform(2, 3.5);
        double well = usual * 60 * draws.uniform(12, 40);
        double stepSeconds = 60.0 * grid.minutes();
        double held = 0;
        boolean on = false;
        double[] strokes = new double[inflow.length];
        int parts = 2 * grid.minutes();
        for (int i = 0; i < inflow.length; i++) {
            double out = 0;
            for (int k = 0; k < parts; k++) {
                held += inflow[i] * stepSeconds / parts;
                on = held > well || on && held > 0.1 * well;
                double most = FastMath.max(rate, 1.1 * inflow[i]) * stepSeconds / parts;
                double taken = on ? FastMath.min(held, most) : 0;
                held -= taken;
                out += taken;
            }
            strokes[i] = out / stepSeconds;
        }
        return Wanders.routed(strokes, grid.minutes() / 60.0, draws.uniform(0.1, 0.25), 1);
    }

    /** Level of the tide above the invert, m; 0 or less while it is below. */
    private double[] tide(double usualDepth) {
        Draws draws = Draws.of(order.seed(), "tide");
        double mean = usualDepth * draws.uniform(-0.5, 0.6);
        double moon = usualDepth * draws.uniform(0.9, 1.4);
        double sun = moon * draws.uniform(0.2, 0.4);
        double moonPhase = draws.uniform(0, 2 * FastMath.PI);
        double sunPhase = draws.uniform(0, 2 * FastMath.PI);
        double[] surge = Wanders.autoregressive(grid, draws, 12 * 60, 0.8, 0.1 * usualDepth);
        double[] tide = new double[grid.size()];
        for (int i = 0; i < tide.length; i++) {
            double hours = 24 * grid.days(i);
            tide[i] = mean
                    + surge[i]
                    + moon * FastMath.cos(2 * FastMath.PI * hours / MOON_HOURS + moonPhase)
                    + sun * FastMath.cos(2 * FastMath.PI * hours / SUN_HOURS + sunPhase);
        }
        return tide;
    }

    /** Hours of backflow on three days after the fault begins. */
    private static final class Backflow {
        private final double[] from = new double[5];
        private final double[] hours = new double[5];

        Backflow(SiteOrder order) {
            Draws draws = Draws.of(order.seed(), "backflow");
            for (int k = 0; k < from.length; k++) {
                from[k] = order.fault().begin() + k * 0.6 + draws.uniform(0, 0.2);
                hours[k] = draws.uniform(2.5, 5);
            }
        }

        double strength(double day) {
            for (int k = 0; k < from.length; k++) {
                double within = (day - from[k]) * 24 / hours[k];
                if (within > 0 && within < 1) {
                    return FastMath.min(1, 5 * FastMath.min(within, 1 - within));
                }
            }
            return 0;
        }
    }
}
