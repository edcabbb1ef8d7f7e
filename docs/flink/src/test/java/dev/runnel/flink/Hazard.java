package dev.runnel.flink;

import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.apache.flink.api.common.functions.RichMapFunction;
import org.apache.flink.api.common.state.CheckpointListener;
import org.apache.flink.runtime.state.FunctionInitializationContext;
import org.apache.flink.runtime.state.FunctionSnapshotContext;
import org.apache.flink.streaming.api.checkpoint.CheckpointedFunction;

/** Lets events pass slowly enough for checkpoints, and throws at random moments after one of them was completed. */
final class Hazard extends RichMapFunction<SiteEvent, SiteEvent> implements CheckpointedFunction, CheckpointListener {
    private static final long serialVersionUID = 1;

    static final AtomicInteger KILLS_LEFT = new AtomicInteger();
    static final AtomicInteger RESTORED = new AtomicInteger();
    static final AtomicInteger CHECKPOINTS = new AtomicInteger();
    static final AtomicLong PASSED = new AtomicLong();

    private final int pace;
    private final long seed;
    private transient Random random = new Random();
    private transient boolean safe;
    private transient long fuse;

    /** After so many events a pause of a millisecond, until as many checkpoints as wished are completed. */
    Hazard(int pace, long seed) {
        this.pace = pace;
        this.seed = seed;
    }

    static void reset(int kills) {
        KILLS_LEFT.set(kills);
        RESTORED.set(0);
        CHECKPOINTS.set(0);
        PASSED.set(0);
    }

    @Override
    public SiteEvent map(SiteEvent event) throws Exception {
        if (PASSED.incrementAndGet() % pace == 0) {
            Thread.sleep(1);
        }
        if (safe && --fuse < 0 && KILLS_LEFT.getAndUpdate(left -> Math.max(0, left - 1)) > 0) {
            throw new IllegalStateException("killed by the test");
        }
        return event;
    }

    @Override
    public void initializeState(FunctionInitializationContext context) {
        random = new Random(seed + PASSED.get());
        fuse = random.nextInt(2000);
        if (context.isRestored()) {
            RESTORED.incrementAndGet();
        }
    }

    @Override
    public void snapshotState(FunctionSnapshotContext context) {}

    @Override
    public void notifyCheckpointComplete(long checkpointId) {
        safe = true;
        CHECKPOINTS.incrementAndGet();
    }
}
