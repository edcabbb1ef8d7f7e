package dev.runnel.verification.oracle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.verification.Check;
import dev.runnel.verification.Selection;
import dev.runnel.verification.Status;
import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class ConduitPeersTest {
    @Test
    void twentyThousandRandomConduitsAgree() {
        List<Check> checks = ConduitPeers.compare(20_000, Selection.all());
        assertThat(checks).hasSize(6);
        assertThat(checks).allSatisfy(check -> {
            assertThat(check.status()).isEqualTo(Status.PASS);
            assertThat(check.computed().orElseThrow()).isPositive();
            assertThat(check.locator()).contains("20000 random conduits");
        });
    }

    @Test
    void thePeerItselfIsRight() {
        // White, Fluid Mechanics, eq. 10.21: the greatest discharge at 0.938 of the diameter, 7.6 % above full bore.
        PeerConduit pipe = new PeerConduit(0.9, 0.002, 0.014, 0, 0, 9.81);
        assertThat(pipe.depthOfMaximum() / 0.9).isEqualTo(0.938181, Offset.offset(1e-6));
        assertThat(pipe.discharge(pipe.depthOfMaximum()) / pipe.discharge(0.9))
                .isEqualTo(1.075706, Offset.offset(1e-6));
        // Chapra, Applied Numerical Methods, pp. 158-160.
        assertThat(PeerConduit.frictionFactor(1.23 * 40 * 0.005 / 1.79e-5, 0.0015 / 5))
                .isEqualTo(0.02896781017144, Offset.offset(1e-13));
    }

    @Test
    void noCaseIsNoProof() {
        assertThatThrownBy(() -> ConduitPeers.compare(0, Selection.all())).hasMessage("cases must be 1 or more, was 0");
    }
}
