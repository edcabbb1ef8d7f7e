package dev.runnel.verification.report;

import dev.runnel.verification.Results;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What a reader must know of a run to repeat it: version, machine, and a checksum of what was compared. */
final class Facts {
    private Facts() {}

    static Map<String, String> of(Results results) {
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Runnel", version());
        facts.put("Java", System.getProperty("java.vm.name") + " " + System.getProperty("java.runtime.version"));
        facts.put("Machine", System.getProperty("os.name") + " " + System.getProperty("os.arch"));
        facts.put("SHA-256 of the expected values", checksum(results));
        return facts;
    }

    /** Stands in the manifest of the jar; classes that were not packed have none. */
    static String version() {
        return Optional.ofNullable(Results.class.getPackage().getImplementationVersion())
                .orElse("not packed");
    }

    /** Over name, source, input, expected value and tolerance of each value, in the order of the run. */
    private static String checksum(Results results) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            results.checks()
                    .forEach(check -> digest.update((check.name() + "\n" + check.source() + "\n" + check.input() + "\n"
                                    + check.printed() + "\n" + check.tolerance() + "\n")
                            .getBytes(StandardCharsets.UTF_8)));
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
