package dev.runnel.hydraulics.watch;

import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * What a change is consistent with. The words say what was seen and what else it could be, never what is the case; of a
 * site without velocity they name no cause at all.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum FindingName {
    /** Depth up, velocity down, flow unchanged. */
    HELD_UP(
            "water held up downstream",
            List.of(
                    "a high level downstream",
                    "sediment at the monitor",
                    "a depth sensor and a velocity sensor that fail together")),
    /** Depth down, velocity up, flow unchanged. */
    RELEASED("an obstruction downstream that is gone", List.of("a velocity sensor that was cleaned or moved")),
    /** Depth and velocity up together. */
    MORE_WATER(
            "more water",
            List.of(
                    "infiltration in a wet season",
                    "a new inflow",
                    "water that came another way before",
                    "pumps upstream that run otherwise")),
    /** Depth and velocity down together. */
    LESS_WATER(
            "less water",
            List.of(
                    "a dry season",
                    "water that takes another way",
                    "a loss upstream",
                    "pumps upstream that run otherwise")),
    /** Depth up or down at once, velocity unchanged. */
    DEPTH_STEP(
            "a depth sensor that was moved or reads another zero",
            List.of("a deposit that came or went at once at the monitor", "readings of another site", "another unit")),
    /** Depth up or down over days, velocity unchanged. */
    DEPTH_DRIFT("a depth sensor that drifts", List.of("sediment at the monitor"), "only a visit tells the two apart"),
    /** Depth up over days, velocity unchanged. */
    SEDIMENT("sediment at the monitor", List.of("a depth sensor that drifts"), "only a visit tells the two apart"),
    /** Velocity down at the same depth and hour. */
    VELOCITY_LOSS(
            "a velocity sensor that loses sight, by fouling or grease",
            List.of("another resistance of the pipe at the monitor", "another unit")),
    /** Velocity up at the same depth and hour. */
    VELOCITY_GAIN(
            "a velocity sensor that reads higher than before",
            List.of(
                    "an obstruction downstream that went while more water came",
                    "a velocity sensor that was cleaned or moved",
                    "a smoother pipe",
                    "another unit")),
    /** Velocity low for the depth; dry hours to tell the rest are missing. */
    VELOCITY_LOW_FOR_DEPTH(
            "velocity low for this depth",
            List.of("water held up", "a velocity sensor", "a depth sensor"),
            "dry hours name a large one, depth and velocity by hand a small one"),
    /** Velocity high for the depth; dry hours to tell the rest are missing. */
    VELOCITY_HIGH_FOR_DEPTH(
            "velocity high for this depth",
            List.of("an obstruction gone", "a velocity sensor", "a depth sensor"),
            "dry hours name a large one, depth and velocity by hand a small one"),
    /** Depth up in dry hours, velocity not known. */
    LEVEL_UP(
            "level up without rain",
            List.of("water held up", "more water such as that of a wet season", "the depth sensor, its zero or unit"),
            "without velocity nothing tells which"),
    /** Depth down in dry hours, velocity not known. */
    LEVEL_DOWN(
            "level down without rain",
            List.of(
                    "an obstruction gone",
                    "less water such as that of a dry season",
                    "the depth sensor, its zero or unit"),
            "without velocity nothing tells which"),
    /** Many velocities of 0 under water. */
    VELOCITY_ZEROS("a velocity sensor that drops out to 0", List.of("standing water, if the depth says so too")),
    /** Many velocities far below the others of their hour. */
    WEAK_ECHO("a velocity sensor with a weak echo", List.of("ragging that comes and goes", "very uneven flow")),
    /** Single velocities of the wrong sign. */
    SIGN_FLIPS(
            "a velocity sensor that takes the wrong direction now and then",
            List.of("electrical noise", "very slow water")),
    /** Velocities of the usual size with the wrong sign for hours. */
    REVERSED_SIGN("a velocity sensor mounted or set the wrong way round", List.of("reverse flow of the usual speed")),
    /** Water that flows upstream for hours. */
    REVERSE_FLOW("water that flows upstream", List.of("a velocity sensor that takes the wrong direction")),
    /** The depth repeats one value. */
    FROZEN_DEPTH(
            "a depth sensor or logger that repeats its last reading",
            List.of("a level held by a weir or a stopped pump")),
    /** The velocity repeats one value. */
    FROZEN_VELOCITY("a velocity sensor or logger that repeats its last reading", List.of("a very steady flow")),
    /** Depth and velocity repeat one value each since the same time. */
    FROZEN_LOGGER(
            "a logger that repeats its last readings, depth and velocity together",
            List.of("two sensors that fail together", "water that stands still")),
    /** Depth and velocity that cannot both be true. */
    CONTRADICTORY(
            "readings that cannot both be true: velocity without water",
            List.of("a depth sensor that hangs dry", "another unit")),
    /** Depths that no reading can be, or next to nothing where water always stood. */
    OUT_OF_RANGE(
            "depths outside of what the sensor can say, or next to nothing where there always was water",
            List.of(
                    "another unit",
                    "a scale that was changed",
                    "a broken cable",
                    "a sensor that hangs dry",
                    "water that takes another way")),
    /** The depth leapt by the factor of a unit, and goes on as usual. */
    DEPTH_UNIT(
            "a depth in another unit or scale since one reading",
            List.of(
                    "a sensor or logger that was set or replaced",
                    "a level that truly leapt so and follows the usual day")),
    /** The velocity at its depth leapt by the factor of a unit, and goes on as usual. */
    VELOCITY_UNIT(
            "a velocity in another unit or scale since one reading",
            List.of("a sensor or logger that was set or replaced", "one that lost or found its sight at once")),
    /** The usual day comes early or late. */
    CLOCK_OF_MONITOR(
            "a clock of the monitor that is off",
            List.of(
                    "habits that moved, as with holidays",
                    "civil clocks where the site names no time zone",
                    "pumps upstream")),
    /** The rain comes early or late for the depth, the day does not. */
    CLOCK_OF_GAUGE(
            "a clock of the rain gauge that is off",
            List.of("storms that travelled another way", "a clock of the monitor")),
    /** The sewer rises as after rain while the gauge has none. */
    SILENT_GAUGE(
            "a rain gauge that writes nothing while the sewer rises as after rain",
            List.of("storms that passed beside the gauge", "water let in or pumped upstream")),
    /** Stamps far ahead that the next stamps do not confirm. */
    FALSE_STAMPS("stamps that leapt ahead and came back", List.of("a clock that was set twice")),
    /** The dry level follows the moon, which the baseline did not show. */
    TIDAL(
            "a level that follows the tide, which the baseline did not see",
            List.of("another course of about 12.4 hours")),
    /** Findings of one direction that close by themselves. */
    BASELINE_DOUBTFUL(
            "a baseline that was not typical",
            List.of("a site whose relation wanders"),
            "a longer or later baseline tells"),
    /** The flow rises farther for each millimetre of rain that is written, storm after storm. */
    GAUGE_CATCHES_LESS(
            "a rain gauge that catches less of the rain than before, as one whose funnel clogs",
            List.of(
                    "ground wetter than before",
                    "more ground or another sewer connected",
                    "storms that were heavier elsewhere",
                    "a tip of another size")),
    /** The flow rises less far for each millimetre of rain that is written, storm after storm. */
    GAUGE_WRITES_MORE(
            "a rain gauge that writes more rain than before, as one set to another size of tip",
            List.of(
                    "ground drier than before",
                    "storm water that takes another way or is held upstream",
                    "storms that were heavier at the gauge",
                    "a gauge that caught less before")),
    /** The depth reads like the usual velocity and the velocity like the usual depth. */
    EXCHANGED_COLUMNS(
            "a depth and a velocity whose columns are exchanged",
            List.of(
                    "two sensors or a logger that were set or replaced",
                    "a full pipe that runs so slowly, held up at once"),
            "one depth or velocity by hand tells"),
    /** Many depths that leap away from their neighbours and back. */
    FALSE_ECHO(
            "a depth sensor that takes a false echo now and then",
            List.of("foam, rags or a rung in its sight", "electrical noise", "water that comes in short strokes")),
    /** Many velocities far above those before and after them. */
    FALSE_VELOCITY(
            "a velocity sensor that reads far too high now and then, such as doubled or aliased readings",
            List.of("bubbles or rags in its sight", "electrical noise", "water that comes in short strokes"));

    private final String words;
    private final List<String> alternatives;
    private final Optional<String> howToTell;

    FindingName(String words, List<String> alternatives) {
        this(words, alternatives, Optional.empty());
    }

    FindingName(String words, List<String> alternatives, String howToTell) {
        this(words, alternatives, Optional.of(howToTell));
    }

    FindingName(String words, List<String> alternatives, Optional<String> howToTell) {
        this.words = words;
        this.alternatives = alternatives;
        this.howToTell = howToTell;
    }

    /**
     * Returns what the change is consistent with.
     *
     * @return a phrase
     */
    public String words() {
        return words;
    }

    /**
     * Returns what else it could be.
     *
     * @return phrases, each an alternative; at least one
     */
    public List<String> alternatives() {
        return alternatives;
    }

    /**
     * Returns what tells the alternatives apart, or that nothing does.
     *
     * @return a phrase; empty where the check of each alternative tells
     */
    public Optional<String> howToTell() {
        return howToTell;
    }
}
