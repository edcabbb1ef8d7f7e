package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.monitoring.SensorUncertainty;
import dev.runnel.hydraulics.structure.HeadDischarge;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.correction.VisitComparison;
import dev.runnel.timeseries.csv.CsvUnit;
import dev.runnel.timeseries.csv.RepeatedHour;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What the site file says: the pipe, its monitor, its gauge, the rules of the review and where the readings lie.
 *
 * @param id name of the site's folder
 * @param folder the folder
 * @param name name of the site
 * @param note a line about it, or empty
 * @param zone clock by which its days are reckoned
 * @param shape its shape and size, for people
 * @param monitor the monitored pipe
 * @param crestLevel crest of the overflow above the invert, m
 * @param weir law of the crest, if the site file tells of one
 * @param bathingSeason season that the annual return tells apart, if there is one
 * @param area area that drains here, m2, if it is known
 * @param upstream id of the site upstream, whose flow passes here too
 * @param alarm rule of the depth alarm
 * @param checks limits of the tests on the readings
 * @param usual where to learn what is usual
 * @param rain rules for the rain
 * @param inputs where the readings lie
 * @param books where visits and corrections lie
 */
public record Site(
        String id,
        Path folder,
        String name,
        String note,
        ZoneId zone,
        String shape,
        PipeMonitor monitor,
        OptionalDouble crestLevel,
        Optional<OverflowWeir> weir,
        Optional<Season> bathingSeason,
        OptionalDouble area,
        Optional<String> upstream,
        Optional<AlarmRule> alarm,
        Checks checks,
        Usual usual,
        RainRules rain,
        Inputs inputs,
        Books books) {

    /**
     * The crest of an overflow as a weir.
     *
     * @param law discharge by head
     * @param words what it is, for people
     * @param lowestHead head below which the law is not to be trusted, m
     */
    public record OverflowWeir(HeadDischarge law, String words, double lowestHead) {}

    /**
     * A part of each year.
     *
     * @param first its first day
     * @param last its last day, included
     */
    public record Season(MonthDay first, MonthDay last) {}

    /**
     * A depth alarm.
     *
     * @param level level above the invert at which it goes on, m
     * @param deadband how far below it must fall to go off, m
     * @param onDelay how long it must stay above before it goes on
     * @param offDelay how long it must stay below before it goes off
     */
    public record AlarmRule(double level, double deadband, Duration onDelay, Duration offDelay) {}

    /**
     * Limits of the tests on the readings.
     *
     * @param interval logging interval, if it is not to be found in the data
     * @param longestGap longest time between two readings that is not a gap, if not 2.5 intervals
     * @param highestDepth largest credible depth reading, m
     * @param fastestVelocity largest credible velocity reading, m/s, either way
     * @param depthSpike depth by which one reading may stand out of its neighbours, m
     * @param flatLine how long a velocity may repeat one value
     * @param uncertainty standard uncertainties of the readings, if they are stated
     */
    public record Checks(
            Optional<Duration> interval,
            Optional<Duration> longestGap,
            double highestDepth,
            double fastestVelocity,
            double depthSpike,
            Duration flatLine,
            Optional<SensorUncertainty> uncertainty) {}

    /**
     * Where to learn what is usual.
     *
     * @param baseline the interval that a person chose, if one did
     * @param holidays days that are like Sundays
     */
    public record Usual(Optional<Interval> baseline, Set<LocalDate> holidays) {}

    /**
     * Rules for the rain.
     *
     * @param bucket the gauge, if it writes tips
     * @param steps what the lines of a gauge mean that writes the rain of each step
     * @param minimumInterEvent dry time that parts two storms
     * @param minimumDepthMm least depth of a storm, mm
     * @param dryDayLimitMm most rain of a dry day, mm
     * @param daysAfterRain days after rain that are not dry either
     * @param basis what the return periods of the depth-duration-frequency table count
     */
    public record RainRules(
            TippingBucket bucket,
            StepRules steps,
            Duration minimumInterEvent,
            double minimumDepthMm,
            double dryDayLimitMm,
            int daysAfterRain,
            ReturnPeriodBasis basis) {}

    /**
     * What the lines of a gauge mean that writes the rain of each step.
     *
     * @param unit mm, mm/h, in or in/h, if the header does not tell
     * @param interval length of a step, if it is not to be found in the data
     * @param isStampAtEnd true if a time is the end of its step
     * @param isDryLeftOut true if a step without a line was dry; if the site file says it
     */
    public record StepRules(
            Optional<String> unit, Optional<Duration> interval, boolean isStampAtEnd, Optional<Boolean> isDryLeftOut) {}

    /**
     * Where the readings lie.
     *
     * @param depth depth readings
     * @param velocity velocity readings
     * @param tips tips of the gauge; its column of values holds counts of tips, if there are any
     * @param rain rain of each step
     * @param ddf the depth-duration-frequency tables
     */
    public record Inputs(Column depth, Column velocity, Column tips, Column rain, DdfFiles ddf) {}

    /**
     * Where visits and corrections lie.
     *
     * @param visits what people found at the site
     * @param corrections what of the readings they corrected
     * @param comparison tolerances of what was read by hand
     * @param tolerances these in words
     */
    public record Books(Path visits, Path corrections, VisitComparison comparison, String tolerances) {}

    /**
     * Where the depth-duration-frequency tables lie.
     *
     * @param depths the table of depths
     * @param lower that of their lower limits
     * @param upper that of their upper limits
     * @param confidence probability between the limits
     */
    public record DdfFiles(Path depths, Path lower, Path upper, double confidence) {}

    /**
     * One column of one file.
     *
     * @param what what it holds: depth, velocity, tips or rain
     * @param file the file; or a folder of files, or a file with * or ? in its name, to be read as one
     * @param isNamed true if the site file names it, so that it must be there
     * @param header name of the column, if it is not to be found
     * @param unit unit of its values, if it is not to be found in the header
     * @param format how the file is written
     */
    public record Column(
            String what,
            Path file,
            boolean isNamed,
            Optional<String> header,
            Optional<CsvUnit> unit,
            FileFormat format) {
        /**
         * Returns the column in the files of another one.
         *
         * @param other the other column
         * @return the column there
         */
        public Column beside(Column other) {
            return new Column(what, other.file, other.isNamed, header, unit, format);
        }

        /**
         * Returns the column in another file.
         *
         * @param other the file
         * @return the column there
         */
        public Column in(Path other) {
            return new Column(what, other, isNamed, header, unit, format);
        }
    }

    /**
     * How a file is written.
     *
     * @param clock clock of times that name no offset
     * @param repeatedHour what becomes of times that a clock change repeats
     * @param timeColumn its column of times, if not the first
     * @param timeOfDayColumn column of the time of day, if it is not in the column of times
     * @param timePattern pattern of the times, if not ISO 8601, or a kind of number
     * @param separator character between the columns, if it is to be found in the file
     * @param isDecimalComma true if decimals have a comma
     * @param preambleLines lines before the header
     * @param missingMarks texts that stand for no value, if not those of the library
     */
    public record FileFormat(
            ZoneId clock,
            RepeatedHour repeatedHour,
            Optional<String> timeColumn,
            Optional<String> timeOfDayColumn,
            Optional<String> timePattern,
            Optional<Character> separator,
            boolean isDecimalComma,
            int preambleLines,
            List<String> missingMarks) {}
}
