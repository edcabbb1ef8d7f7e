package dev.runnel.rainfall;

import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import dev.runnel.rainfall.areal.RainGrid;
import dev.runnel.rainfall.areal.SpatialEstimator;
import dev.runnel.rainfall.design.DesignStorm;
import dev.runnel.rainfall.distribution.Parameter;
import dev.runnel.rainfall.event.StormCriteria;
import dev.runnel.rainfall.gauge.TipChecks;
import java.time.Duration;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** Factories that only keep what they are given refuse null at once, by the name of the parameter. */
class NullArgumentsTest {
    @Test
    void aNullIsNamed() {
        named("bucket", () -> TipChecks.of(null));
        named("variogram", () -> SpatialEstimator.ordinaryKriging(null));
        named("southWest", () -> RainGrid.from(null, 1000));
        named("rule", () -> DesignStorm.ofDepths(null, Duration.ofMinutes(5), 1, 2));
        named("name", () -> StormCriteria.ofDepthAndIntensity(null, 5, 6, Duration.ofMinutes(10)));
        named("name", () -> Parameter.location(null));
        named("name", () -> Parameter.scale(null));
        named("name", () -> Parameter.shape(null));
    }

    private static void named(String parameter, ThrowingCallable call) {
        assertThatNullPointerException().isThrownBy(call).withMessage(parameter);
    }
}
