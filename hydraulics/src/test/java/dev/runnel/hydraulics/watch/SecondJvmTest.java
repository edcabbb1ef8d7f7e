package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.contract.SecondJvm;
import java.io.IOException;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Surcharges and findings of a watch go on in another process. */
class SecondJvmTest {
    @ParameterizedTest
    @ValueSource(ints = {9, 430})
    @Timeout(120)
    void goesOnWhereTheFirstStood(int cut) throws IOException, InterruptedException {
        // Before anything is found, and with a finding open.
        assertThat(SecondJvm.goesOn(new HydraulicsRecords(), cut))
                .anyMatch(each -> each.contains("water held up downstream"))
                .anyMatch(each -> each.startsWith("SurchargePeriod["));
    }
}
