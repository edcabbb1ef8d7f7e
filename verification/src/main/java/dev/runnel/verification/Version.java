package dev.runnel.verification;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * A version number, compared part by part. Immutable.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Version implements Comparable<Version> {
    private final List<Integer> parts;

    private Version(List<Integer> parts) {
        this.parts = parts;
    }

    /**
     * Reads a version.
     *
     * @param text two or three numbers joined by points, such as {@code 0.1}
     * @return the version
     * @throws IllegalArgumentException if it is no such text
     */
    public static Version parse(String text) {
        if (!text.matches("[0-9]{1,6}(\\.[0-9]{1,6}){1,2}")) {
            throw new IllegalArgumentException("must be a version such as 0.1 or 0.1.2, was \"" + text + "\"");
        }
        return new Version(
                Arrays.stream(text.split("\\.")).map(Integer::valueOf).toList());
    }

    @Override
    public int compareTo(Version other) {
        for (int i = 0; i < 3; i++) {
            int order = Integer.compare(part(i), other.part(i));
            if (order != 0) {
                return order;
            }
        }
        return 0;
    }

    private int part(int i) {
        return i < parts.size() ? parts.get(i) : 0;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Version that && compareTo(that) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * (31 * part(0) + part(1)) + part(2);
    }

    @Override
    public String toString() {
        return parts.stream().map(String::valueOf).collect(Collectors.joining("."));
    }
}
