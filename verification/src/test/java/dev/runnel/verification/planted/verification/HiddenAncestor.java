package dev.runnel.verification.planted.verification;

/** Not public, but its public method is inherited by a type that is. */
abstract class HiddenAncestor {
    /** Inherited. */
    public int inherited() {
        return 1;
    }
}
