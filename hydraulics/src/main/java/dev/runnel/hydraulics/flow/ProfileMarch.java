package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Roots;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;

/** The two marches behind {@link VariedFlow}: slow flow upstream, then down again, fast or slow whichever stands. */
final class ProfileMarch {
    private final List<ReachFlow> flows = new ArrayList<>();
    private final int[] steps;
    /** Slow flow of each reach, from its lower end upwards; it may end at critical depth before the upper end. */
    private final DepthCurve[] slow;

    private final List<Station> stations = new ArrayList<>();
    private final List<JumpPlace> jumps = new ArrayList<>();

    ProfileMarch(List<Reach> reaches, double discharge, ToIntFunction<Reach> stepsOf) {
        reaches.forEach(reach -> flows.add(new ReachFlow(reach, discharge)));
        steps = reaches.stream().mapToInt(stepsOf).toArray();
        slow = new DepthCurve[flows.size()];
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

    private void marchUp(double outletDepth) {
        for (int r = flows.size() - 1; r >= 0; r--) {
            ReachFlow flow = flows.get(r);
            double start = r == flows.size() - 1 ? Math.max(outletDepth, flow.critical()) : joinUp(r);
            slow[r] = DepthCurve.slow(flow, start);
        }
    }

    /** Slow level at the lower end of a reach from that at the upper end of the next; never below critical: an outfall. */
    private double joinUp(int r) {
        ReachFlow flow = flows.get(r);
        ReachFlow next = flows.get(r + 1);
        double above = slowAt(r + 1, 0);
        double value = next.energy(Double.isNaN(above) ? next.critical() : above)
                - flow.reach().drop();
        return flow.slowLevel(value, flow.reach().lossCoefficient());
    }

    /** Slow level at a distance below the upper end of a reach; NaN where slow flow is impossible. */
    private double slowAt(int r, double x) {
        return slow[r].depthAt(flows.get(r).reach().length() - x);
    }

    private void marchDown(double inletDepth, double inletInvert) {
        double start = 0;
        double invert = inletInvert;
        double join = inletDepth < flows.get(0).critical() ? inletDepth : Double.NaN;
        for (int r = 0; r < flows.size(); r++) {
            ReachFlow flow = flows.get(r);
            double length = flow.reach().length();
            DepthCurve fast = fastFrom(r, join);
            double last = Double.NaN;
            double depth = Double.NaN;
            for (int i = 0; i <= steps[r]; i++) {
                double x = length * i / steps[r];
                double slowLevel = slowAt(r, x);
                depth = fast == null ? Double.NaN : fast.depthAt(x);
                boolean stands = !Double.isNaN(depth)
                        && (Double.isNaN(slowLevel) || flow.momentum(depth) > flow.momentum(slowLevel));
                if (fast != null && !stands) {
                    if (i > 0) {
                        jumps.add(jump(r, fast, start, last, x));
                    }
                    fast = null;
                    depth = Double.NaN;
                }
                stations.add(new Station(start + x, invert - x * flow.bedSlope(), stands ? depth : slowLevel, flow));
                last = x;
            }
            join = fast == null || r + 1 == flows.size() ? Double.NaN : joinDown(r + 1, depth);
            start += length;
            invert -= length * flow.bedSlope() + flow.reach().drop();
        }
    }

    /** Fast flow from the upper end of a reach: as it comes in, or through critical depth where slow flow is impossible. */
    private @Nullable DepthCurve fastFrom(int r, double join) {
        ReachFlow flow = flows.get(r);
        boolean impossible = Double.isNaN(slowAt(r, 0));
        if (Double.isNaN(join)) {
            return impossible ? DepthCurve.fast(flow, flow.critical()) : null;
        }
        return DepthCurve.fast(flow, join);
    }

    /** Fast depth at the upper end of a reach from that at the lower end of the reach before. */
    private double joinDown(int r, double fast) {
        ReachFlow before = flows.get(r - 1);
        Reach reach = before.reach();
        double value = before.energy(fast) + reach.drop() - reach.lossCoefficient() * before.velocityHead(fast);
        return flows.get(r).fastDepth(value);
    }

    /** Places the jump where the momenta of the fast and the slow line are the same. */
    private JumpPlace jump(int r, DepthCurve fast, double start, double above, double below) {
        ReachFlow flow = flows.get(r);
        double length = flow.reach().length();
        double from = Math.max(above, length - slow[r].end(length));
        double to = Math.min(below, fast.end(length));
        double x = Roots.between(
                at -> flow.momentum(fast.depthWithin(at)) - flow.momentum(slow[r].depthWithin(length - at)), from, to);
        double depth = Math.min(fast.depthWithin(x), flow.critical());
        double behind = flow.flow().conjugateDepth(depth);
        return new JumpPlace(start + x, new HydraulicJump(flow.flow(), depth, behind));
    }
}
