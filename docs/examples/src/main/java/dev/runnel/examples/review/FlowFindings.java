package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.FullnessTime;
import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.monitoring.SurchargeRule;
import dev.runnel.internal.SeriesArrays;
import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.balance.DailyTotal;
import dev.runnel.timeseries.balance.DailyTotals;
import dev.runnel.timeseries.balance.DaySampling;
import dev.runnel.timeseries.balance.Discharges;
import dev.runnel.timeseries.balance.SpillCount;
import dev.runnel.timeseries.balance.SpillTally;
import dev.runnel.timeseries.quality.GoodDay;
import dev.runnel.timeseries.quality.GoodDays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * What depth and velocity say of the pipe.
 *
 * @param record level, velocity and flow
 * @param levels statistics of the levels, which many figures are made of
 * @param fullness time above 50, 80 and 100 % of the height
 * @param surcharges times above the soffit
 * @param spills times above the crest, if there is an overflow
 * @param volumes flow of each local day, m3
 * @param days how much of each local day has usable flow, or level where there is no velocity
 * @param sampling how well the readings tell the flow of a single day
 * @param alarms depth alarms, none if there is no rule for them
 * @param uncertainty u(Q)/|Q| of the usable flows, if uncertainties of depth and velocity are stated
 */
record FlowFindings(
        FlowRecord record,
        Statistics levels,
        List<FullnessTime> fullness,
        List<SurchargePeriod> surcharges,
        Optional<Spills> spills,
        List<DailyTotal> volumes,
        List<GoodDay> days,
        DaySampling sampling,
        List<AlarmEvent> alarms,
        Optional<Statistics> uncertainty) {
    private static final double FEW_IN_COMMON = 0.5;

    /**
     * Water above the crest of the overflow.
     *
     * @param periods times above it
     * @param tally how many spills they count as
     * @param seenOnce how many of the periods are known by one reading, with a gap after it; each is counted as lasting
     *     one logging interval
     */
    record Spills(List<SurchargePeriod> periods, SpillTally tally, int seenOnce) {}

    static FlowFindings of(SiteData data) {
        FlowRecord record = record(data);
        List<FullnessTime> fullness = DoubleStream.of(0.5, 0.8, 1)
                .mapToObj(share -> FullnessTime.of(record, share, data.longestGap()))
                .toList();
        List<SurchargePeriod> surcharges = SurchargeRule.of(data.site().monitor())
                .withMaximumGap(data.longestGap())
                .over(record.level());
        List<DailyTotal> volumes = DailyTotals.in(data.site().zone())
                .withMaximumGap(data.longestGap())
                .totals(record.flow());
        List<AlarmEvent> alarms = data.site()
                .alarm()
                .map(rule -> SiteRules.alarm(rule, data.longestGap()).events(record.level()))
                .orElse(List.of());
        Optional<Statistics> uncertainty = data.site()
                .checks()
                .uncertainty()
                .map(inputs -> Statistics.of(SeriesArrays.keeper().usableValues(record.relativeUncertainty(inputs))));
        return new FlowFindings(
                record,
                record.level().statistics(),
                fullness,
                surcharges,
                spills(data, record),
                volumes,
                GoodDays.in(data.site().zone()).of(data.velocity().isPresent() ? record.flow() : record.level()),
                DaySampling.of(record.flow(), volumes),
                alarms,
                uncertainty);
    }

    /** Where depth and velocity have few times in common, the velocity is taken between its readings. */
    static FlowRecord record(SiteData data) {
        MonitorHistory monitors = data.books().monitors();
        Series depth = data.depth().series();
        Series velocity = data.velocity().map(CheckedReadings::series).orElse(Series.empty());
        FlowRecord record = monitors.flow(depth, velocity);
        return data.velocity().isPresent() && record.depthsAlone() > FEW_IN_COMMON * depth.size()
                ? monitors.flow(
                        depth, velocity, Alignment.linear(data.velocity().get().longestGap()))
                : record;
    }

    /** Tells whether depth and velocity were read on clocks of their own. */
    boolean isInterpolated() {
        return record.velocitiesAlone() > FEW_IN_COMMON * record.size();
    }

    private static Optional<Spills> spills(SiteData data, FlowRecord record) {
        if (data.site().crestLevel().isEmpty()) {
            return Optional.empty();
        }
        List<SurchargePeriod> periods = SurchargeRule.above(
                        data.site().crestLevel().getAsDouble())
                .withMaximumGap(data.longestGap())
                .over(record.level());
        List<Interval> seen = periods.stream().map(SurchargePeriod::interval).toList();
        int seenOnce = (int) seen.stream().filter(Interval::isEmpty).count();
        List<Interval> discharges = Discharges.widened(seen, data.depth().interval());
        return Optional.of(new Spills(periods, SpillCount.twelveTwentyFour().count(discharges), seenOnce));
    }
}
