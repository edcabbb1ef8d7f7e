package dev.runnel.hydraulics.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;

/** The two marches behind {@link VariedFlow}: slow flow upstream, then down again, fast or slow whichever stands. */
final class ProfileMarch {
    private final List<ReachFlow> flows = new ArrayList<>();
    private final int[] steps;
    /** Slow level at each station of each reach; NaN where slow flow is impossible. */
    private final double[][] slow;

    private final List<Station> stations = new ArrayList<>();
    private final List<JumpPlace> jumps = new ArrayList<>();

    ProfileMarch(List<Reach> reaches, double discharge, ToIntFunction<Reach> stepsOf) {
        reaches.forEach(reach -> flows.add(new ReachFlow(reach, discharge)));
        steps = reaches.stream().mapToInt(stepsOf).toArray();
        slow = new double[flows.size()][];
    }

    WaterProfile run(double outletDepth, double inletDepth, double outletInvert) {
        marchUp(outletDepth);
        marchDown(inletDepth, outletInvert + fall());
        return new WaterProfile(stations, jumps);
    }

    private double fall() {
        double fall = 0;
        for (int r = 0; r < flows.size(); r++) {
            Reach reach = flows.get(r).reach();
            fall += reach.length() * reach.gradient().value() + (r + 1 < flows.size() ? reach.drop() : 0);
        }
        return fall;
    }

    private double dx(int r) {
        return flows.get(r).reach().length() / steps[r];
    }

    private void marchUp(double outletDepth) {
        for (int r = flows.size() - 1; r >= 0; r--) {
            ReachFlow flow = flows.get(r);
            double[] level = new double[steps[r] + 1];
            slow[r] = level;
            level[steps[r]] = r == flows.size() - 1 ? Math.max(outletDepth, flow.critical()) : joinUp(r);
            double half = dx(r) / 2;
            for (int i = steps[r] - 1; i >= 0; i--) {
                double below = Double.isNaN(level[i + 1]) ? flow.critical() : level[i + 1];
                double value = flow.energy(below) + flow.frictionSlope(below) * half - flow.bedSlope() * 2 * half;
                level[i] = flow.slowLevel(value, half, 0);
            }
        }
    }

    /** Slow level at the lower end of a reach from that at the upper end of the next; never below critical: an outfall. */
    private double joinUp(int r) {
        ReachFlow flow = flows.get(r);
        ReachFlow next = flows.get(r + 1);
        double below = Double.isNaN(slow[r + 1][0]) ? next.critical() : slow[r + 1][0];
        double value = next.energy(below) - flow.reach().drop();
        double level = flow.slowLevel(value, 0, -flow.reach().lossCoefficient());
        return Double.isNaN(level) ? flow.critical() : level;
    }

    private void marchDown(double inletDepth, double inletInvert) {
        double start = 0;
        double invert = inletInvert;
        double fast = Double.NaN;
        boolean isFast = false;
        for (int r = 0; r < flows.size(); r++) {
            ReachFlow flow = flows.get(r);
            double half = dx(r) / 2;
            if (r > 0) {
                fast = isFast ? joinDown(r, fast) : Double.NaN;
            } else if (inletDepth < flow.critical()) {
                fast = inletDepth;
            }
            double lastFast = Double.NaN;
            for (int i = 0; i <= steps[r]; i++) {
                if (i > 0 && isFast) {
                    double value = flow.energy(fast) + flow.bedSlope() * 2 * half - flow.frictionSlope(fast) * half;
                    lastFast = fast;
                    fast = flow.fastDepth(value, half);
                }
                double slowLevel = slow[r][i];
                if (Double.isNaN(slowLevel)) {
                    // Slow flow is impossible here: the water passes critical and runs fast.
                    fast = Double.isNaN(fast) ? flow.critical() : fast;
                    isFast = true;
                } else if (!Double.isNaN(fast) && flow.momentum(fast) > flow.momentum(slowLevel)) {
                    isFast = true;
                } else {
                    if (isFast && i > 0) {
                        jumps.add(jump(flow, start + (i - 1) * 2 * half, 2 * half, lastFast, fast, r, i));
                    }
                    isFast = false;
                    fast = Double.NaN;
                }
                stations.add(new Station(
                        start + i * 2 * half,
                        invert - i * 2 * half * flow.bedSlope(),
                        isFast ? fast : slowLevel,
                        flow));
            }
            start += flow.reach().length();
            invert -= flow.reach().length() * flow.bedSlope() + flow.reach().drop();
        }
    }

    /** Fast depth at the upper end of a reach from that at the lower end of the reach before. */
    private double joinDown(int r, double fast) {
        ReachFlow before = flows.get(r - 1);
        Reach reach = before.reach();
        double value = before.energy(fast) + reach.drop() - reach.lossCoefficient() * before.velocityHead(fast);
        return flows.get(r).fastDepth(value, 0);
    }

    /** Places the jump where the momenta of the fast and the slow line cross between two stations. */
    private JumpPlace jump(ReachFlow flow, double from, double dx, double fastAbove, double fastHere, int r, int i) {
        double share = 0;
        double depth = fastAbove;
        double slowAbove = slow[r][i - 1];
        if (!Double.isNaN(fastHere) && !Double.isNaN(slowAbove)) {
            double above = flow.momentum(fastAbove) - flow.momentum(slowAbove);
            double here = flow.momentum(fastHere) - flow.momentum(slow[r][i]);
            share = above / (above - here);
            depth = fastAbove + share * (fastHere - fastAbove);
        }
        double behind = flow.flow().conjugateDepth(depth);
        return new JumpPlace(from + share * dx, new HydraulicJump(flow.flow(), depth, behind));
    }
}
