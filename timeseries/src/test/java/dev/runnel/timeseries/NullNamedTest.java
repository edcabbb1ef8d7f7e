package dev.runnel.timeseries;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.contract.NullArguments;
import org.junit.jupiter.api.Test;

/** Every public call refuses null by the name of the parameter. */
class NullNamedTest {
    @Test
    void everyCallNamesTheParameterThatIsNull() {
        NullArguments.Outcome outcome = NullArguments.in(Series.class);
        // What EpochNanos is given is the name of somebody else's parameter.
        assertThat(outcome.unnamed())
                .filteredOn(call -> !call.startsWith("dev.runnel.timeseries.EpochNanos#"))
                .isEmpty();
        // So that the search for samples does not give up unseen.
        assertThat(outcome.refused()).isGreaterThan(380);
        assertThat(outcome.notReached()).hasSizeLessThan(155);
    }
}
