package dev.runnel.examples.store;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.watch.BaselineRule;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.SiteRecord;
import dev.runnel.hydraulics.watch.WatchNotice;
import dev.runnel.hydraulics.watch.WatchRule;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A process that sends invented readings to a database until none are left. */
final class StoreChild {
    static final String SITE = "saltings-lane";

    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
    private static final int PER_DAY = 96;
    private static final int LEARNED = 28 * PER_DAY;
    private static final int ALL = 45 * PER_DAY;
    private static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.6), Gradient.ofRatio(1, 200), Manning.of(0.013)));

    private StoreChild() {}

    public static void main(String[] arguments) throws SQLException {
        try (Connection connection = connect(arguments[0])) {
            System.out.println("sending");
            send(connection, 40);
            System.out.println("done");
        }
    }

    static Connection connect(String file) throws SQLException {
        // A commit is on the disk when it returns.
        return DriverManager.getConnection("jdbc:h2:" + file + ";WRITE_DELAY=0");
    }

    /** Sends what the database has not confirmed, with some of what it has, as a sender does that lost the answer. */
    static void send(Connection connection, int batch) throws SQLException {
        List<StoredReading> all = readings();
        SiteStore store = SiteStore.on(connection, detectors(all));
        Instant last = store.last(SITE).orElse(Instant.MIN);
        int next = 0;
        while (next < all.size() && !all.get(next).time().isAfter(last)) {
            next++;
        }
        for (int i = Math.max(0, next - 25); i < all.size(); i += batch) {
            store.take(SITE, all.subList(i, Math.min(all.size(), i + batch)));
        }
    }

    static List<Detector<?, ?, ?>> detectors(List<StoredReading> readings) {
        SiteBaseline baseline = BaselineRule.of(MONITOR)
                .withDays(28)
                .learn(SiteRecord.ofReadings(readings.subList(0, LEARNED).stream()
                        .map(StoreChild::both)
                        .toList()))
                .baseline()
                .orElseThrow();
        return List.of(
                new Detector<>(
                        "depth-high",
                        ThresholdAlarm.high(0.19).withDeadband(0.01).withOnDelay(Duration.ofMinutes(30)),
                        row -> Reading.of(row.time(), row.depth()),
                        AlarmEvent::toString),
                new Detector<>("watch", WatchRule.of(baseline), StoreChild::both, WatchNotice::toString));
    }

    private static SiteReading both(StoredReading row) {
        return new SiteReading(row.time(), row.depth(), row.velocity(), Double.NaN);
    }

    /** A day that comes again, with scatter; from day 34 on the water stands higher at the same flow. */
    static List<StoredReading> readings() {
        Random random = new Random(11);
        List<StoredReading> all = new ArrayList<>();
        for (int i = 0; i < ALL; i++) {
            double hour = i % PER_DAY / 4.0;
            double depth = (0.12 + 0.04 * Math.sin((hour - 9) * Math.PI / 12)) * (1 + 0.03 * random.nextGaussian());
            double velocity = 0.7 * Math.pow(depth / 0.12, 0.55) * Math.exp(0.04 * random.nextGaussian());
            double up = i < 34 * PER_DAY ? 1 : 1.35;
            Instant time = START.plus(Duration.ofMinutes(15L * i));
            all.add(new StoredReading(time, depth * up, i % 97 == 0 ? Double.NaN : velocity * Math.pow(up, -1.4)));
        }
        return all;
    }
}
