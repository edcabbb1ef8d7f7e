package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.Interval;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Hours as a gatherer makes them, each figure of which is known: the level goes up and down by 30 % once a day about 0.12 m, the
 * velocity is that of 0.9 m/s there to the power of 0.6, and both scatter by 2 % in a way that comes to nothing over hours.
 */
final class KnownHours {
    static final int DAYS = 14;
    static final int COUNT = 24 * DAYS;
    static final long FIRST = InventedSite.START.getEpochSecond() / 3600;
    static final double LN_LEVEL = Math.log(0.12);
    static final double EXPONENT = 0.6;
    static final Interval STRETCH = Interval.of(InventedSite.START, InventedSite.START.plus(Duration.ofDays(DAYS)));
    static final Set<DayOfWeek> REST = Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY);
    static final LocalHours LOCAL = new LocalHours(ZoneOffset.UTC, REST, Set.of());

    private KnownHours() {}

    /** Hours of the stretch, each of which may be changed before it is told dry or wet. */
    static LearningHours of(Consumer<SiteHour> change) {
        LearningHours hours = new LearningHours();
        for (int i = 0; i < COUNT; i++) {
            SiteHour hour = new SiteHour(FIRST + i);
            hour.readings = 4;
            hour.looked = 4;
            hour.rain = 0;
            level(hour, LN_LEVEL + 0.3 * Math.sin(Math.PI * i / 12) + 0.02 * Math.sin(1.7 * i));
            velocity(hour, Math.log(0.9) + EXPONENT * (hour.lnDepth - LN_LEVEL) + 0.02 * Math.cos(2.3 * i));
            hour.velocityScatter = 0.02;
            change.accept(hour);
            hours.accept(hour);
        }
        return hours;
    }

    static int index(SiteHour hour) {
        return (int) (hour.hour - FIRST);
    }

    static void level(SiteHour hour, double lnLevel) {
        hour.lnDepth = lnLevel;
        hour.meanLnDepth = lnLevel;
    }

    static void velocity(SiteHour hour, double lnVelocity) {
        hour.lnVelocity = lnVelocity;
        hour.meanLnVelocity = lnVelocity;
    }

    static StretchHours stretch(Consumer<SiteHour> change) {
        return new StretchHours(of(change), STRETCH, LOCAL);
    }

    static BaselineFit fit(Consumer<SiteHour> change) {
        return fit(InventedSite.MONITOR, change);
    }

    static BaselineFit fit(PipeMonitor monitor, Consumer<SiteHour> change) {
        return new BaselineFit(
                monitor,
                MonitorHistory.of(monitor),
                of(change),
                STRETCH,
                BaselineFit.LEAST_DRY_HOURS,
                ZoneOffset.UTC,
                REST,
                Set.of());
    }

    static SiteBaseline baseline(Consumer<SiteHour> change) {
        return fit(change).baseline().orElseThrow();
    }

    static StateText text(SiteBaseline baseline) {
        return StateText.parse(SiteBaseline.NAME, SiteBaseline.VERSION, baseline.toText());
    }

    static Instant day(double day) {
        return InventedSite.START.plus(Duration.ofMinutes(Math.round(1440 * day)));
    }
}
