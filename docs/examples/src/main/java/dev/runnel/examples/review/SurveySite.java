package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/** The folder of a site as the prompt takes it: readings after the tests, rain, storms, and what the review found. */
public final class SurveySite {
    private final SiteReview review;

    private SurveySite(SiteReview review) {
        this.review = review;
    }

    /**
     * Reads and reviews a folder.
     *
     * @param folder a folder with a {@code site.txt}
     * @return the site
     * @throws IllegalArgumentException if it cannot be used; the message names file and line
     */
    public static SurveySite read(Path folder) {
        if (!java.nio.file.Files.isRegularFile(folder.resolve(SiteFile.NAME))) {
            throw new IllegalArgumentException("folder must hold " + SiteFile.NAME + ", was " + folder);
        }
        return new SurveySite(SiteReview.of(SiteData.read(folder)));
    }

    /**
     * Returns its name.
     *
     * @return the name
     */
    public String name() {
        return review.site().name();
    }

    /**
     * Returns the clock by which its days are reckoned.
     *
     * @return the zone
     */
    public ZoneId zone() {
        return review.site().zone();
    }

    /**
     * Returns the monitored pipe.
     *
     * @return pipe, sensor offset, sediment and velocity factor
     */
    public PipeMonitor monitor() {
        return review.site().monitor();
    }

    /**
     * Returns the time that was recorded.
     *
     * @return from the first depth reading to one logging interval after the last
     */
    public Interval record() {
        return review.data().record();
    }

    /**
     * Returns the depth readings.
     *
     * @return readings with the quality that the tests gave them, m
     */
    public Series depth() {
        return review.data().depth().series();
    }

    /**
     * Returns the velocity readings.
     *
     * @return readings with the quality that the tests gave them, m/s; none where there is no sensor
     */
    public Series velocity() {
        return review.data().velocity().map(CheckedReadings::series).orElse(Series.empty());
    }

    /**
     * Returns level, velocity and flow.
     *
     * @return the record
     */
    public FlowRecord flow() {
        return review.flow().record();
    }

    /**
     * Returns the rain while the logger was at work.
     *
     * @return depth in equal steps, mm; empty without a gauge
     */
    public Optional<RegularSeries> rain() {
        return review.rain().map(RainFindings::rain);
    }

    /**
     * Returns the storms.
     *
     * @return storms in order of time; none without a gauge
     */
    public List<RainfallEvent> storms() {
        return review.rain()
                .map(rain ->
                        rain.storms().stream().map(RainFindings.Storm::event).toList())
                .orElse(List.of());
    }

    /**
     * Returns the dry days.
     *
     * @return dates on the clock of the site; none without a gauge
     */
    public SortedSet<LocalDate> dryDays() {
        return review.rain().map(rain -> rain.days().dates()).orElseGet(TreeSet::new);
    }

    /**
     * Returns the depth-duration-frequency table that lies in the folder.
     *
     * @return the table, if there is one
     */
    public Optional<DdfTable> ddf() {
        return review.data().ddf();
    }

    /**
     * Returns what is usual at the site.
     *
     * @return the baseline; empty where no stretch passes the tests of stability
     */
    public Optional<SiteBaseline> baseline() {
        return review.watched().baseline();
    }

    /**
     * Returns what has changed.
     *
     * @return findings in order of time
     */
    public List<Finding> findings() {
        return review.watched().findings();
    }

    /**
     * Returns the profile of the dry days that no finding touches.
     *
     * @return flow in m3/s, or level in m where there is no velocity; empty with less than three such days
     */
    public Optional<DiurnalProfile> dryWeather() {
        return review.dryWeather().usual().profile();
    }

    /**
     * Returns what it is and how much there is of it.
     *
     * @return a few words
     */
    @Override
    public String toString() {
        return "SurveySite[" + name() + ", " + depth().size() + " depths, "
                + velocity().size() + " velocities, " + storms().size() + " storms, "
                + findings().size() + (findings().size() == 1 ? " finding]" : " findings]");
    }
}
