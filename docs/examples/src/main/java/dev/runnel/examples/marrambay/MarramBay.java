package dev.runnel.examples.marrambay;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.internal.Text;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.Function;

/** Makes the readings of Marram Bay and writes them as the two loggers would leave them. */
public final class MarramBay {
    static final double CREST_LEVEL = 0.680;
    static final double CREST_LENGTH = 1.2;
    static final double SENSOR_OFFSET = 0.015;
    static final double VELOCITY_FACTOR = 0.90;

    private static final int TRAVEL_STEPS = 360 / RainField.STEP_SECONDS;

    private final RainField rain;
    private final PipeResponse saltingsLane;
    private final PipeResponse quayStreet;

    private MarramBay() {
        rain = RainField.of(random(1));
        double gradient = 1.0 / 150;
        Conduit upper = Conduit.of(
                CircularSection.ofDiameter(0.450),
                Gradient.ofRatio(1, 150),
                ColebrookWhite.ofRoughness(0.0015).atTemperature(12));
        Conduit lower = Conduit.of(CircularSection.ofDiameter(0.600), Gradient.ofRatio(1, 220), Manning.of(0.013));
        double[] inflow = new Catchment(0.0200, 37_000, 9).flow(rain.atSaltingsLane(), random(2));
        saltingsLane = PipeResponse.surcharging(upper, gradient, CREST_LEVEL, CREST_LENGTH, inflow);
        double[] flow = new Catchment(0.0150, 9_000, 7).flow(rain.atQuayStreet(), random(3));
        for (int i = 0; i < flow.length; i++) {
            flow[i] += saltingsLane.passed()[Math.max(0, i - TRAVEL_STEPS)];
        }
        quayStreet = PipeResponse.behindBlockage(lower, flow, Sensor.blockageHeight(flow.length));
    }

    /**
     * Writes all readings of the demo.
     *
     * @param args the folder to write into, which holds a folder for each site
     * @throws IOException if a file cannot be written
     */
    public static void main(String[] args) throws IOException {
        if (args.length != 1) {
            throw new IllegalArgumentException("args must be the folder to write into, were " + List.of(args));
        }
        write(Path.of(args[0]));
    }

    /**
     * Writes all readings of the demo: always the same bytes.
     *
     * @param folder folder to write into; made if it is not there
     * @throws IOException if a file cannot be written
     */
    public static void write(Path folder) throws IOException {
        MarramBay town = new MarramBay();
        town.writeSaltingsLane(Files.createDirectories(folder.resolve("saltings-lane")));
        town.writeQuayStreet(Files.createDirectories(folder.resolve("quay-street")));
    }

    private void writeSaltingsLane(Path folder) throws IOException {
        Function<Instant, String> clock = clock("yyyy-MM-dd HH:mm", Scenario.ZONE);
        LoggerFile depth = new LoggerFile(header("depth", "local time, Europe/London", "local_time,depth_mm"), clock);
        LoggerFile velocity =
                new LoggerFile(header("velocity", "local time, Europe/London", "local_time,velocity_m_per_s"), clock);
        double[] depthMm = Sensor.depthMm(saltingsLane.depth(), SENSOR_OFFSET, random(4));
        double[] speed = Sensor.velocity(saltingsLane.velocity(), VELOCITY_FACTOR, random(5));
        Sensor.foul(speed);
        fill(depth, depthMm, 0);
        fill(velocity, speed, 3);

        depth.repeat("2026-10-09T08:00:00Z", 14);
        depth.contradict("2026-10-12T11:20:00Z", "151");
        depth.lose("2026-10-13T02:00:00Z", "2026-10-13T05:20:00Z");
        depth.replaceValue("2026-10-15T15:30:00Z", "412");
        depth.spoil("2026-10-16T07:44:00Z", "2026-10-16 08:4");
        depth.replaceValue("2026-10-30T03:12:00Z", "-38");
        depth.delay("2026-11-04T10:00:00Z", 5, Duration.ofMinutes(30));
        velocity.lose("2026-10-13T02:00:00Z", "2026-10-13T05:20:00Z");
        velocity.spoil("2026-11-11T14:02:00Z", "2026-11-11 14:02,#ERR");
        depth.write(folder.resolve("depth.csv"));
        velocity.write(folder.resolve("velocity.csv"));

        LoggerFile tips = new LoggerFile(
                header("tips of a 0.2 mm bucket", "local time, Europe/London", "local_time"),
                clock("yyyy-MM-dd HH:mm:ss", Scenario.ZONE));
        RainField.tips(withLoneTip(rain.atSaltingsLane())).forEach(tip -> tips.add(tip, ""));
        tips.write(folder.resolve("tips.csv"));
    }

    private void writeQuayStreet(Path folder) throws IOException {
        Function<Instant, String> clock = clock("yyyy-MM-dd'T'HH:mm:ss'Z'", ZoneOffset.UTC);
        LoggerFile depth = new LoggerFile(header("depth", "UTC", "time,depth_mm"), clock);
        LoggerFile velocity = new LoggerFile(header("velocity", "UTC", "time,velocity_m_per_s"), clock);
        fill(depth, Sensor.depthMm(quayStreet.depth(), 0, random(6)), 0);
        fill(velocity, Sensor.velocity(quayStreet.velocity(), 1, random(7)), 3);

        depth.lose("2026-10-22T05:00:00Z", "2026-10-23T02:00:00Z");
        velocity.lose("2026-10-22T05:00:00Z", "2026-10-23T02:00:00Z");
        depth.repeat("2026-11-01T00:00:00Z", 6);
        velocity.repeat("2026-11-01T00:00:00Z", 6);
        velocity.delay("2026-10-08T12:00:00Z", 3, Duration.ofMinutes(10));
        velocity.replaceValue("2026-10-29T17:00:00Z", "-0.512");
        depth.write(folder.resolve("depth.csv"));
        velocity.write(folder.resolve("velocity.csv"));

        LoggerFile tips = new LoggerFile(header("tips of a 0.2 mm bucket", "UTC", "time"), clock);
        double[] caught = RainField.throughBlockedFunnel(withLoneTip(rain.atQuayStreet()), Scenario.SLOW_FUNNEL);
        RainField.tips(caught).forEach(tip -> tips.add(tip, ""));
        tips.spoil("2026-10-18T09:00:00Z", "2026-10-18T09:0");
        tips.write(folder.resolve("tips.csv"));
    }

    private static void fill(LoggerFile file, double[] readings, int decimals) {
        for (int i = 0; i < readings.length; i++) {
            file.add(Scenario.START.plus(Scenario.STEP.multipliedBy(i)), Text.fixed(readings[i], decimals));
        }
    }

    /** Dew fills the bucket just far enough to tip once. */
    private static double[] withLoneTip(double[] rainMm) {
        double[] out = rainMm.clone();
        out[(int) Duration.between(Scenario.START, Scenario.LONE_TIP).toSeconds() / RainField.STEP_SECONDS] +=
                Scenario.TIP_MM;
        return out;
    }

    private static List<String> header(String what, String zone, String columns) {
        return List.of(
                "# INVENTED readings of an invented town, Marram Bay: made by dev.runnel.examples.marrambay.MarramBay",
                "# " + what + "; times are " + zone,
                columns);
    }

    private static Function<Instant, String> clock(String pattern, ZoneId zone) {
        DateTimeFormatter formatter =
                DateTimeFormatter.ofPattern(pattern, Locale.ROOT).withZone(zone);
        return formatter::format;
    }

    private static Random random(int stream) {
        return new Random(Scenario.SEED + stream);
    }
}
