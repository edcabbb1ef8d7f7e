package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A hydraulic jump in a profile.
 *
 * @param distance where the momentum of the fast and the slow profile are equal, m downstream of the start
 * @param jump the jump
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record JumpPlace(double distance, HydraulicJump jump) {
    /**
     * Checks that nothing is missing.
     *
     * @param distance where the momentum of the fast and the slow profile are equal, m downstream of the start
     * @param jump the jump
     */
    public JumpPlace {
        Objects.requireNonNull(jump, "jump");
    }

    @Override
    public String toString() {
        return "at " + Text.significant(distance, 5) + " m " + jump;
    }
}
