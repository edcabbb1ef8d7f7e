package dev.runnel.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.contract.NullArguments;
import org.junit.jupiter.api.Test;

/** Every public call refuses null by the name of the parameter. */
class NullNamedTest {
    @Test
    void everyCallNamesTheParameterThatIsNull() {
        NullArguments.Outcome outcome = NullArguments.in(Conduit.class, Series.class);
        assertThat(outcome.unnamed()).isEmpty();
        // So that the search for samples does not give up unseen.
        assertThat(outcome.refused()).isGreaterThan(305);
        assertThat(outcome.notReached()).hasSizeLessThan(105);
    }
}
