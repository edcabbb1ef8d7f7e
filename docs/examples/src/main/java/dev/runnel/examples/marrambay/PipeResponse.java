package dev.runnel.examples.marrambay;

import dev.runnel.hydraulics.flow.Conduit;

/** What flow does in a pipe, in the steps of the rain. */
final class PipeResponse {
    /** The way from the monitor down to the next manhole, m: the head of a surcharge works along it. */
    private static final double REACH_LENGTH = 130;
    /** Surface that fills when the pipe surcharges: manholes and the connections upstream, m2. */
    private static final double STORAGE_AREA = 260;
    /** Q = 1.7 b h^1.5 for a crest of length b; the factor is common practice for a plain broad crest. */
    private static final double CREST_FACTOR = 1.7;

    private final double[] depth;
    private final double[] velocity;
    private final double[] passed;

    private PipeResponse(int length) {
        depth = new double[length];
        velocity = new double[length];
        passed = new double[length];
    }

    /** Returns the depth above the invert, above the soffit in surcharge, m. */
    double[] depth() {
        return depth;
    }

    /** Returns the mean velocity, m/s. */
    double[] velocity() {
        return velocity;
    }

    /** Returns the flow that goes on down the pipe, m3/s; what spills is not in it. */
    double[] passed() {
        return passed;
    }

    /**
     * Lets flow run at normal depth until it exceeds the full bore; then the head above the soffit rises with the
     * storage, drives the pipe under the steeper gradient and spills over the crest.
     */
    static PipeResponse surcharging(
            Conduit pipe, double gradient, double crestLevel, double crestLength, double[] flow) {
        PipeResponse result = new PipeResponse(flow.length);
        NormalDepths normal = NormalDepths.of(pipe);
        double bore = pipe.section().height();
        double fullFlow = pipe.fullBore().discharge();
        double fullArea = pipe.fullBore().area();
        double head = 0;
        for (int i = 0; i < flow.length; i++) {
            if (head <= 0 && flow[i] <= fullFlow) {
                double depth = normal.at(flow[i]);
                result.set(i, depth, flow[i] / pipe.section().area(depth), flow[i]);
                continue;
            }
            double passed = fullFlow * Math.sqrt((gradient + head / REACH_LENGTH) / gradient);
            double overCrest = Math.max(0, bore + head - crestLevel);
            double spilled = CREST_FACTOR * crestLength * overCrest * Math.sqrt(overCrest);
            head = Math.max(0, head + (flow[i] - passed - spilled) / STORAGE_AREA * RainField.STEP_SECONDS);
            result.set(i, bore + head, passed / fullArea, passed);
        }
        return result;
    }

    /**
     * Lets flow run at normal depth, or at the depth that a heap of rags and silt of the given height holds up behind
     * it: its height and the head that drives the flow over it.
     */
    static PipeResponse behindBlockage(Conduit pipe, double[] flow, double[] blockageHeight) {
        PipeResponse result = new PipeResponse(flow.length);
        NormalDepths normal = NormalDepths.of(pipe);
        double bore = pipe.section().height();
        for (int i = 0; i < flow.length; i++) {
            double free = normal.at(flow[i]);
            double depth = free;
            if (blockageHeight[i] > 0) {
                double held = blockageHeight[i] + Math.cbrt(Math.pow(flow[i] / (CREST_FACTOR * 0.8 * bore), 2));
                depth = Math.min(bore, Math.pow(Math.pow(free, 6) + Math.pow(held, 6), 1.0 / 6));
            }
            result.set(i, depth, flow[i] / pipe.section().area(depth), flow[i]);
        }
        return result;
    }

    private void set(int index, double newDepth, double newVelocity, double newPassed) {
        depth[index] = newDepth;
        velocity[index] = newVelocity;
        passed[index] = newPassed;
    }
}
