package dev.runnel.hydraulics.evidence;

import org.apiguardian.api.API;

/**
 * Which way a quantity drifts.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum Direction {
    /** A significant rise that is large enough to matter. */
    UP,
    /** A significant fall that is large enough to matter. */
    DOWN,
    /** No drift was found. That is not a proof that there is none: few days or much scatter hide one. */
    NONE
}
