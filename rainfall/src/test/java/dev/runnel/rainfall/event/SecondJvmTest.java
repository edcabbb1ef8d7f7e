package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.contract.SecondJvm;
import java.io.IOException;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Events of rain, of steps and of tips, go on in another process. */
class SecondJvmTest {
    @ParameterizedTest
    @ValueSource(ints = {9, 131})
    @Timeout(60)
    void goesOnWhereTheFirstStood(int cut) throws IOException, InterruptedException {
        assertThat(SecondJvm.goesOn(new RainfallRecords(), cut)).hasSizeGreaterThan(8);
    }
}
