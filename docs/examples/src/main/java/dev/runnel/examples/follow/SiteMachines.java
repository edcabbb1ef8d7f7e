package dev.runnel.examples.follow;

import dev.runnel.examples.review.ReadingChecks;
import dev.runnel.examples.review.Site;
import dev.runnel.examples.review.SiteBooks;
import dev.runnel.examples.review.SiteRules;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.monitoring.SurchargeRule;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.alarm.Alarm;
import dev.runnel.timeseries.alarm.AlarmChange;
import dev.runnel.timeseries.alarm.AlarmInput;
import dev.runnel.timeseries.alarm.AlarmSignal;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import dev.runnel.timeseries.quality.CheckedReading;
import dev.runnel.timeseries.quality.QualityCheck;
import dev.runnel.timeseries.quality.QualityChecks;
import dev.runnel.timeseries.quality.QualityFlag;
import dev.runnel.timeseries.quality.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** The tests, alarms and periods of a site, which must know its logging interval, and what they write. */
final class SiteMachines {
    private static final List<String> FLAG = List.of("time_utc", "test", "verdict", "reason");

    /** Chosen here: a depth sensor that gives nothing usable for so long needs a visit. */
    private static final Duration BAD_FOR = Duration.ofHours(1);

    private final Site site;
    private final SiteBooks books;
    private final OutputFiles outputs;
    private final Consumer<String> print;
    private final Map<String, String> begun;
    private final Map<String, Slot<AlarmInput, AlarmChange>> alarms = new LinkedHashMap<>();
    private final Map<String, Slot<Reading, SurchargePeriod>> periods = new LinkedHashMap<>();
    private final List<QualityCheck> depthChecks;
    private final List<QualityCheck> velocityChecks;
    private final Slot<Reading, CheckedReading> depthTests;
    private final Optional<Slot<Reading, CheckedReading>> velocityTests;

    SiteMachines(
            Site site,
            SiteBooks books,
            boolean hasVelocity,
            Duration interval,
            OutputFiles outputs,
            Map<String, String> state,
            Consumer<String> print) {
        this.site = site;
        this.books = books;
        this.outputs = outputs;
        this.print = print;
        this.begun = state;
        Duration gap = ReadingChecks.longestGap(site, interval);
        QualityChecks depth = ReadingChecks.depth(site);
        QualityChecks velocity = ReadingChecks.velocity(site, interval);
        depthChecks = depth.checks();
        velocityChecks = velocity.checks();
        depthTests = Slot.of(key("depth-tests"), depth, begun, print);
        velocityTests =
                hasVelocity ? Optional.of(Slot.of(key("velocity-tests"), velocity, begun, print)) : Optional.empty();
        site.alarm().ifPresent(rule -> alarm("depth high", AlarmSignal.value(), SiteRules.alarm(rule, gap)));
        level("above the soffit", "surcharge.csv", site.monitor().soffit(), gap);
        site.crestLevel().ifPresent(crest -> level("above the crest", "spills.csv", crest, gap));
        alarm(
                "no usable depth",
                AlarmSignal.badQuality(),
                ThresholdAlarm.high(0.5).withOnDelay(BAD_FOR).withMaximumGap(gap));
    }

    private String key(String what) {
        return site.id() + "/" + what;
    }

    private void alarm(String name, AlarmSignal signal, ThresholdAlarm limit) {
        alarms.put(name, Slot.of(key("alarm-" + name.replace(' ', '-')), Alarm.of(name, signal, limit), begun, print));
    }

    /** An alarm tells when the water passes a level, a period how long and how high it stood above it. */
    private void level(String name, String file, double level, Duration gap) {
        alarm(name, AlarmSignal.value(), ThresholdAlarm.high(level).withMaximumGap(gap));
        periods.put(
                file, Slot.of(key("periods-" + file), SurchargeRule.above(level).withMaximumGap(gap), begun, print));
    }

    void save(Map<String, String> state) {
        depthTests.save(state);
        velocityTests.ifPresent(slot -> slot.save(state));
        alarms.values().forEach(slot -> slot.save(state));
        periods.values().forEach(slot -> slot.save(state));
    }

    /**
     * Takes a depth, corrected. An alarm waits for no later reading, as the test for spikes must: a site may fall silent at
     * its highest level.
     */
    void depth(Instant time, double depth) {
        flags(depthTests.next(reading(time, depth)), depthChecks, "depth-flags.csv");
        boolean isPossible = depth >= 0 && depth <= site.checks().highestDepth();
        double offset = books.monitors().at(time).sensorOffset();
        Reading level = Double.isNaN(depth)
                ? reading(time, depth)
                : new Reading(time, depth + offset, isPossible ? Quality.UNCHECKED : Quality.SUSPECT);
        alarms.forEach((name, slot) -> slot.next(AlarmInput.of(level)).forEach(change -> tell(name, change)));
        periods.forEach((file, slot) -> slot.next(level).forEach(period -> tell(file, period)));
    }

    void velocity(Instant time, double velocity) {
        velocityTests.ifPresent(
                slot -> flags(slot.next(reading(time, velocity)), velocityChecks, "velocity-flags.csv"));
    }

    private static Reading reading(Instant time, double value) {
        return new Reading(time, value, Double.isNaN(value) ? Quality.MISSING : Quality.UNCHECKED);
    }

    private void flags(List<CheckedReading> readings, List<QualityCheck> tests, String file) {
        for (CheckedReading reading : readings) {
            List<QualityFlag> flags = reading.flags();
            for (int i = 0; i < flags.size(); i++) {
                Verdict verdict = flags.get(i).verdict();
                if (verdict == Verdict.FAIL || verdict == Verdict.UNUSUAL) {
                    outputs.add(
                            key(file),
                            FLAG,
                            List.of(
                                    flags.get(i).time(),
                                    tests.get(i).name(),
                                    verdict.toText(),
                                    flags.get(i).reason()));
                }
            }
        }
    }

    private void tell(String alarm, AlarmChange change) {
        outputs.add(key("alarms.csv"), Words.ALARM, Words.row(alarm, change));
        print.accept(Words.line(site.name(), alarm, change));
    }

    private void tell(String file, SurchargePeriod period) {
        String level = file.equals("spills.csv") ? "crest" : "soffit";
        outputs.add(
                key(file),
                List.of("start_utc", "end_utc", "duration_h", "peak_above_" + level + "_m", "peak_utc", "complete"),
                List.of(
                        period.interval().start(),
                        period.interval().end(),
                        Text.significant(period.duration().toSeconds() / 3600.0, 6),
                        Text.significant(period.peakAbove(), 4),
                        period.peakTime(),
                        period.isComplete() ? "yes" : "no"));
    }

    /** Ends the record: nothing more will come. */
    void finish() {
        flags(depthTests.finish(), depthChecks, "depth-flags.csv");
        velocityTests.ifPresent(slot -> flags(slot.finish(), velocityChecks, "velocity-flags.csv"));
        periods.forEach((file, slot) -> slot.finish().forEach(period -> tell(file, period)));
    }
}
