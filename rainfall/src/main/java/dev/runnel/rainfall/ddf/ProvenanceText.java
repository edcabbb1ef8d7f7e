package dev.runnel.rainfall.ddf;

/** Figures that a user brings must say where they come from. */
final class ProvenanceText {
    private ProvenanceText() {}

    static String require(String provenance) {
        if (provenance.isBlank()) {
            throw new IllegalArgumentException("provenance must say where the factors come from, was blank");
        }
        return provenance;
    }
}
