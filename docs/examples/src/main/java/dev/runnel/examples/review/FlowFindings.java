package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.FullnessTime;
import dev.runnel.hydraulics.monitoring.Surcharge;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.timeseries.Series;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * What depth and velocity say of the pipe.
 *
 * @param record level, velocity and flow
 * @param fullness time above 50, 80 and 100 % of the height
 * @param surcharges times above the soffit
 */
record FlowFindings(FlowRecord record, List<FullnessTime> fullness, List<SurchargePeriod> surcharges) {
    static FlowFindings of(SiteData data) {
        Series velocity = data.velocity().map(CheckedReadings::series).orElse(Series.empty());
        FlowRecord record = data.site().monitor().flow(data.depth().series(), velocity);
        List<FullnessTime> fullness = DoubleStream.of(0.5, 0.8, 1)
                .mapToObj(share -> FullnessTime.of(record, share, data.longestGap()))
                .toList();
        List<SurchargePeriod> surcharges = Surcharge.of(data.site().monitor())
                .withMaximumGap(data.longestGap())
                .periods(record.level());
        return new FlowFindings(record, fullness, surcharges);
    }
}
