package dev.runnel.hydraulics.structure;

import java.util.List;

/** A value that equals another of its class made of equal parts: what the types of this package have in common. */
abstract class OfParts {
    private final List<Object> parts;

    OfParts(Object... parts) {
        this.parts = List.of(parts);
    }

    /** The very class must be the same: a weir and one made from it with the same parts are two things. */
    @Override
    @SuppressWarnings("EqualsGetClass")
    public final boolean equals(Object other) {
        return other != null && other.getClass() == getClass() && parts.equals(((OfParts) other).parts);
    }

    @Override
    public final int hashCode() {
        return parts.hashCode();
    }
}
