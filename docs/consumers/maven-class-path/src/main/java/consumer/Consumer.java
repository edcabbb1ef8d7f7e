package consumer;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.rainfall.distribution.Gumbel;
import dev.runnel.timeseries.Series;
import java.time.Instant;

/** One call into each jar. */
public final class Consumer {
    private Consumer() {}

    public static void main(String[] arguments) {
        var pipe = Conduit.of(CircularSection.ofDiameter(0.450), Gradient.ofRatio(1, 150), Manning.of(0.013));
        System.out.println(Math.round(1e4 * pipe.fullBore().discharge()));
        System.out.println(Math.round(1e4 * Gumbel.of(20, 5).quantile(0.9)));
        System.out.println(
                Series.builder().add(Instant.EPOCH, 1.5).build().statistics().mean());
        System.out.println(Consumer.class.getModule().isNamed() ? "module path" : "class path");
    }
}
