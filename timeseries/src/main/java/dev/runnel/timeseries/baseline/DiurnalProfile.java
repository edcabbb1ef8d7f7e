package dev.runnel.timeseries.baseline;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.Statistics;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.apiguardian.api.API;

/**
 * What is usual at each time of the local day, made from chosen days of a record; the package page says how. Immutable
 * and thread-safe; making one is the expensive part.
 *
 * <p>On the day when clocks go forward the skipped slots simply have no readings; when they go back, the readings of
 * both passes through the repeated hour share its slots. A slot with fewer days than the rule asks for has no value:
 * NaN, and counted by {@link #emptySlots()}.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DiurnalProfile {
    private static final int SECONDS_IN_DAY = 86_400;
    private static final LocalTime NIGHT_END = LocalTime.of(6, 0);

    /** A weekend of two days is enough to part it from the week. */
    private static final int FEWEST_WEEKEND_DAYS = 2;

    private final ZoneId zone;
    private final LocalSeconds clock;
    private final ProfileRule rule;
    private final Map<DayClass, Statistics[]> slots;
    private final Map<DayClass, Integer> days;
    private final int daysWithoutReadings;

    private DiurnalProfile(ZoneId zone, ProfileRule rule, ProfileDays collected) {
        this.zone = zone;
        this.clock = new LocalSeconds(zone);
        this.rule = rule;
        this.slots = new EnumMap<>(DayClass.class);
        this.days = new EnumMap<>(DayClass.class);
        for (DayClass each : rule.split().classes()) {
            slots.put(each, collected.statistics(each));
            days.put(each, collected.days(each));
        }
        this.daysWithoutReadings = collected.daysWithoutReadings();
    }

    /**
     * Makes a profile by the {@linkplain ProfileRule#standard() standard rule}.
     *
     * @param series readings; those not usable are left out
     * @param dates local dates to take, such as the dry days
     * @param zone zone of the local day
     * @return the profile
     * @throws IllegalArgumentException if no class of days has three with readings
     */
    public static DiurnalProfile from(Series series, Set<LocalDate> dates, ZoneId zone) {
        return from(series, dates, zone, ProfileRule.standard());
    }

    /**
     * Returns the finest profile that the days bear: weekdays and weekends apart where the rule parts them, each has the
     * least number of days and no slot of the day is without a value; else all days together.
     *
     * @param series readings
     * @param dates the days to use
     * @param zone clock of the days
     * @param rule slot, split and the least number of days; of a weekend two days are enough
     * @return the profile; empty if there are too few days with readings even together
     */
    public static Optional<DiurnalProfile> finest(Series series, Set<LocalDate> dates, ZoneId zone, ProfileRule rule) {
        Objects.requireNonNull(zone, "zone");
        long weekend = dates.stream()
                .filter(day -> rule.classOf(day) == DayClass.WEEKEND)
                .count();
        boolean canSplit = weekend >= FEWEST_WEEKEND_DAYS && dates.size() - weekend >= rule.minimumDays();
        return (canSplit
                        ? attempt(series, dates, zone, rule.withMinimumDays(FEWEST_WEEKEND_DAYS))
                        : Optional.<DiurnalProfile>empty())
                .filter(profile -> profile.emptySlots() == 0)
                .or(() -> attempt(series, dates, zone, rule.withSplit(WeekSplit.NONE)));
    }

    private static Optional<DiurnalProfile> attempt(
            Series series, Set<LocalDate> dates, ZoneId zone, ProfileRule rule) {
        DiurnalProfile profile = new DiurnalProfile(zone, rule, new ProfileDays(series, dates, zone, rule));
        return profile.mostDays() < rule.minimumDays() ? Optional.empty() : Optional.of(profile);
    }

    /**
     * Makes a profile.
     *
     * @param series readings; those not usable are left out
     * @param dates local dates to take, such as the dry days
     * @param zone zone of the local day
     * @param rule how it is made
     * @return the profile
     * @throws IllegalArgumentException if no class of days has the least number of days with readings
     */
    public static DiurnalProfile from(Series series, Set<LocalDate> dates, ZoneId zone, ProfileRule rule) {
        ProfileDays collected = new ProfileDays(series, dates, zone, rule);
        DiurnalProfile profile = new DiurnalProfile(zone, rule, collected);
        if (profile.mostDays() < rule.minimumDays()) {
            throw new IllegalArgumentException("dates must have at least " + rule.minimumDays()
                    + " days with usable readings in a class of days, was " + dates.size() + " dates with "
                    + profile.days);
        }
        return profile;
    }

    private int mostDays() {
        return days.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    }

    /**
     * Returns how it was made.
     *
     * @return the rule
     */
    public ProfileRule rule() {
        return rule;
    }

    /**
     * Returns the zone of the local day.
     *
     * @return the zone
     */
    public ZoneId zone() {
        return zone;
    }

    /**
     * Returns how many days of a class had readings.
     *
     * @param dayClass class of days
     * @return count; 0 for a class that the rule does not keep apart
     */
    public int days(DayClass dayClass) {
        Objects.requireNonNull(dayClass, "dayClass");
        return days.getOrDefault(dayClass, 0);
    }

    /**
     * Returns how many of the dates given had no usable reading.
     *
     * @return count
     */
    public int daysWithoutReadings() {
        return daysWithoutReadings;
    }

    /**
     * Returns how many slots, of all classes together, have too few days for a value.
     *
     * @return count
     */
    public int emptySlots() {
        int empty = 0;
        for (Statistics[] ofClass : slots.values()) {
            for (Statistics slot : ofClass) {
                empty += slot.count() < rule.minimumDays() ? 1 : 0;
            }
        }
        return empty;
    }

    /**
     * Returns the slots of a class of days.
     *
     * @param dayClass class of days that the rule keeps apart
     * @return slots in the order of the day
     * @throws IllegalArgumentException if the rule does not keep it apart
     */
    public List<ProfileSlot> slots(DayClass dayClass) {
        Statistics[] ofClass = statistics(dayClass);
        return IntStream.range(0, ofClass.length)
                .mapToObj(i -> new ProfileSlot(
                        dayClass,
                        LocalTime.ofSecondOfDay(i * rule.slot().getSeconds()),
                        ofClass[i].count(),
                        enough(ofClass[i]) ? ofClass[i].mean() : Double.NaN,
                        enough(ofClass[i]) ? ofClass[i].median() : Double.NaN))
                .toList();
    }

    /**
     * Returns what is expected at an instant: the median over the days.
     *
     * @param time the instant
     * @return value in the unit of the readings; NaN if the slot has too few days
     */
    public double expected(Instant time) {
        return quantile(time, 0.5);
    }

    /**
     * Returns the mean over the days at an instant.
     *
     * @param time the instant
     * @return value in the unit of the readings; NaN if the slot has too few days
     */
    public double mean(Instant time) {
        Statistics slot = slot(localSecond(time));
        return enough(slot) ? slot.mean() : Double.NaN;
    }

    /**
     * Returns a quantile over the days at an instant, as {@link Statistics#quantile} defines it.
     *
     * @param time the instant
     * @param probability p, in [0, 1]
     * @return value in the unit of the readings; NaN if the slot has too few days
     * @throws IllegalArgumentException if {@code probability} is outside [0, 1] or NaN
     */
    public double quantile(Instant time, double probability) {
        return quantile(localSecond(time), probability);
    }

    private double quantile(long localSecond, double probability) {
        Statistics slot = slot(localSecond);
        double quantile = probability == 0.5 ? slot.median() : slot.quantile(probability);
        return enough(slot) ? quantile : Double.NaN;
    }

    /**
     * Returns the band between two quantiles at an instant.
     *
     * @param time the instant
     * @param lower probability of the lower quantile, in [0, 0.5]
     * @param upper probability of the upper quantile, in [0.5, 1]
     * @return the band; NaN if the slot has too few days
     * @throws IllegalArgumentException if a probability is outside its range or NaN
     */
    public ProfileBand band(Instant time, double lower, double upper) {
        Require.inRange("lower", lower, 0, 0.5, "");
        Require.inRange("upper", upper, 0.5, 1, "");
        return new ProfileBand(quantile(time, lower), expected(time), quantile(time, upper));
    }

    /**
     * Returns the mean over a whole day of a class.
     *
     * @param dayClass class of days that the rule keeps apart
     * @return mean of the slot means, in the unit of the readings; NaN if a slot has too few days
     * @throws IllegalArgumentException if the rule does not keep it apart
     */
    public double mean(DayClass dayClass) {
        return slots(dayClass).stream().mapToDouble(ProfileSlot::mean).average().orElse(Double.NaN);
    }

    /**
     * Returns the mean over a whole week, each class of days weighted by its days in a week: of a flow in dry weather,
     * the average dry weather flow.
     *
     * @return mean in the unit of the readings; NaN if a slot has too few days
     */
    public double mean() {
        double sum = 0;
        for (DayClass each : rule.split().classes()) {
            sum += each.daysInWeek() * mean(each);
        }
        return sum / 7;
    }

    /**
     * Returns the slot with the smallest mean between midnight and six o'clock local time.
     *
     * @param dayClass class of days that the rule keeps apart
     * @return the slot; empty if none there has enough days
     * @throws IllegalArgumentException if the rule does not keep the class apart
     */
    public Optional<ProfileSlot> nightMinimum(DayClass dayClass) {
        return slots(dayClass).stream()
                .filter(slot -> slot.start().isBefore(NIGHT_END) && !Double.isNaN(slot.mean()))
                .min(Comparator.comparingDouble(ProfileSlot::mean));
    }

    /**
     * Returns how far readings lie above what is expected; a test for change works on these and not on the readings,
     * which follow the day.
     *
     * @param series readings
     * @return reading minus expected, quality kept; missing where the profile has no value
     */
    public Series residuals(Series series) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < series.size(); i++) {
            double residual = series.value(i) - quantile(clock.of(series.epochNanos(i)), 0.5);
            builder.add(series.epochNanos(i), residual, Double.isNaN(residual) ? Quality.MISSING : series.quality(i));
        }
        return builder.build();
    }

    private Statistics[] statistics(DayClass dayClass) {
        Statistics[] found = slots.get(dayClass);
        if (found == null) {
            throw new IllegalArgumentException(
                    "dayClass must be one of " + rule.split().classes() + ", was " + dayClass);
        }
        return found;
    }

    private long localSecond(Instant time) {
        return clock.of(EpochNanos.of(time));
    }

    private Statistics slot(long local) {
        LocalDate date = LocalDate.ofEpochDay(Math.floorDiv(local, SECONDS_IN_DAY));
        int slot = (int) (Math.floorMod(local, SECONDS_IN_DAY) / rule.slot().getSeconds());
        return statistics(rule.classOf(date))[slot];
    }

    private boolean enough(Statistics slot) {
        return slot.count() >= rule.minimumDays();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("DiurnalProfile[slots of ").append(Text.duration(rule.slot()));
        for (DayClass each : rule.split().classes()) {
            text.append(", ")
                    .append(each.toText())
                    .append(": ")
                    .append(days(each))
                    .append(" days, mean ");
            text.append(Text.significant(mean(each), 4));
        }
        return text.append(", ").append(emptySlots()).append(" empty slots]").toString();
    }
}
