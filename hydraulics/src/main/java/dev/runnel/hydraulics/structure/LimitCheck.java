package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;

/** Refuses heads outside the limits of application. */
final class LimitCheck {
    private LimitCheck() {}

    static void possible(HeadDischarge structure, double head) {
        Require.nonNegative("head", head, "m");
        Require.inRange("head", head, 0, structure.highestHead(), "m");
    }

    static void check(HeadDischarge structure, double head) {
        for (ApplicationLimit limit : structure.limits()) {
            if (!limit.isMet(head)) {
                throw new IllegalArgumentException("head " + Text.number(head)
                        + " m is outside the limits of application: " + limit.refusal(limit.value(head)));
            }
        }
    }
}
