package dev.runnel.verification.report;

import dev.runnel.verification.Check;
import dev.runnel.verification.Results;
import dev.runnel.verification.Source;
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

    /** Over name, input, expected value and tolerance of each value, in the order of the run, and its source where another begins. */
    private static String checksum(Results results) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            Optional<Source> above = Optional.empty();
            for (Check check : results.checks()) {
                String source = above.filter(check.source()::equals).isPresent() ? "" : check.source() + "\n";
                above = Optional.of(check.source());
                digest.update((source + check.name() + "\n" + check.input() + "\n" + check.printed() + "\n"
                                + check.tolerance() + "\n")
                        .getBytes(StandardCharsets.UTF_8));
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
