package dev.runnel.verification.listing;

import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Rule;
import dev.runnel.verification.WholeRun;
import java.util.Map;

/** Which types may be called stable, and what keeps the others from it. */
final class Stability {
    private static final String ROOT = "dev.runnel.";
    private static final Map<String, Long> PUBLISHED = WholeRun.publishedByClass();

    private Stability() {}

    /** Whether a published value reaches a calculation of the type, or of the type around it; or it is the contract of machines. */
    static boolean mayBeStable(String type) {
        return isContract(type) || published(type) > 0;
    }

    /** What is missing, in words. */
    static String missing(String member) {
        String type = member.contains("#") ? member.substring(0, member.indexOf('#')) : member;
        if (type.startsWith(ROOT + "verification.")) {
            return "the tool of the proof is not part of the promise yet";
        }
        if (published(type) > 0 || isContract(type)) {
            return "its shape has not been through a release";
        }
        return PUBLISHED.containsKey(type.substring(ROOT.length()))
                ? "no published value reaches it"
                : "calculates nothing a print could confirm; its shape has not been through a release";
    }

    private static long published(String type) {
        String name = type.substring(ROOT.length());
        String around = name.contains("$") ? name.substring(0, name.indexOf('$')) : name;
        return PUBLISHED.getOrDefault(name, PUBLISHED.getOrDefault(around, 0L));
    }

    private static boolean isContract(String type) {
        try {
            Class<?> found = Class.forName(type);
            return MachineState.class.isAssignableFrom(found) || found == Machine.class || found == Rule.class;
        } catch (ClassNotFoundException e) {
            throw new IllegalStateException("the listing names a class that is not there", e);
        }
    }
}
