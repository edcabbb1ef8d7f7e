package dev.runnel.examples.follow;

import java.time.Clock;

/** The command in a process of its own, with short parts, so that it has much to bring to the disk. */
final class FollowChild {
    private static final int PART = 4096;

    private FollowChild() {}

    public static void main(String[] args) {
        System.exit(Follow.run(args, System.out, System.err, Clock.systemUTC(), PART));
    }
}
