package dev.runnel.verification.simulation;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.timeseries.RegularSeries;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** What the watch finds in the records of a folder: every file of readings is a site, a file of rain is their gauge. */
final class SurveyReport {
    /** Slope for want of a drawing; the watch asks it only whether the velocities can be true at all. */
    private static final double GRADIENT = 0.002;

    private SurveyReport() {}

    static String of(Path folder, double diameter, ZoneId zone) throws IOException {
        List<SurveyFile> files = new ArrayList<>();
        StringBuilder text = new StringBuilder();
        List<Path> all;
        try (Stream<Path> paths = Files.list(folder)) {
            all = paths.sorted().toList();
        }
        for (Path path : all) {
            if (path.toString().endsWith(".csv")) {
                Optional<SurveyFile> file = SurveyFile.read(path, zone);
                if (file.isEmpty()) {
                    text.append(path.getFileName()).append(": no record of depth or rain\n");
                }
                file.ifPresent(files::add);
            }
        }
        List<SurveyLabel> labels = SurveyLabel.of(all);
        Optional<SurveyFile> gauge =
                files.stream().filter(file -> file.depth().isEmpty()).findFirst();
        for (SurveyFile file : files) {
            if (file.depth().isPresent()) {
                Feed feed = feed(file, gauge, diameter, zone);
                text.append(one(file, feed, labels));
            }
        }
        return text.toString();
    }

    private static String one(SurveyFile file, Feed feed, List<SurveyLabel> labels) {
        Heard heard = new RunnelWatcher().watch(feed);
        int n = feed.stamp().length;
        StringBuilder text = new StringBuilder("\n" + file.name() + ": " + n + " readings");
        if (n > 0) {
            text.append(", ").append(feed.stamp()[0]).append(" to ").append(feed.stamp()[n - 1]);
        }
        text.append(file.bad() > 0 ? ", " + file.bad() + " lines not readable" : "");
        text.append(heard.refused() > 0 ? ", " + heard.refused() + " readings refused" : "")
                .append('\n');
        text.append(heard.note().indent(2));
        if (heard.learned()) {
            text.append("  findings: ").append(heard.said().size()).append('\n');
        }
        heard.said().forEach(said -> text.append(said.text().indent(4)));
        labels.stream()
                .filter(label -> file.name().startsWith(label.file()))
                .forEach(label -> text.append(label.against(heard.said()).indent(2)));
        return text.toString();
    }

    private static Feed feed(SurveyFile file, Optional<SurveyFile> gauge, double diameter, ZoneId zone) {
        double[] depth = file.depth().orElseThrow();
        double[] velocity = file.velocity().orElseGet(() -> missing(depth.length));
        double highest =
                Arrays.stream(depth).filter(y -> !Double.isNaN(y)).max().orElse(1);
        ClosedSection section = diameter > 0
                ? CircularSection.ofDiameter(diameter)
                : RectangularSection.box(Math.max(1, highest), Math.max(1, 1.5 * highest));
        RegularSeries rain = gauge.map(SurveyReport::regular)
                .orElseGet(() -> RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(15)));
        return new Feed(
                section, GRADIENT, zone, Set.of(), file.stamp(), depth, velocity, Feed.since(rain, file.stamp()), rain);
    }

    private static double[] missing(int size) {
        double[] missing = new double[size];
        Arrays.fill(missing, Double.NaN);
        return missing;
    }

    /** Lines of a gauge as steps of their usual length; steps without a line are missing. */
    private static RegularSeries regular(SurveyFile gauge) {
        Instant[] stamp = gauge.stamp();
        double[] rain = gauge.rain().orElseThrow();
        long[] apart = new long[Math.max(0, stamp.length - 1)];
        for (int i = 0; i < apart.length; i++) {
            apart[i] = Duration.between(stamp[i], stamp[i + 1]).toSeconds();
        }
        long step = Arrays.stream(apart)
                .filter(s -> s > 0)
                .sorted()
                .skip(apart.length / 2)
                .findFirst()
                .orElse(900);
        long first = stamp[0].getEpochSecond();
        int size = (int) Math.min(2_000_000, (stamp[stamp.length - 1].getEpochSecond() - first) / step + 1);
        double[] steps = missing(size);
        for (int i = 0; i < stamp.length; i++) {
            long at = (stamp[i].getEpochSecond() - first) / step;
            if (at >= 0 && at < size) {
                steps[(int) at] = rain[i] + (Double.isNaN(steps[(int) at]) ? 0 : steps[(int) at]);
            }
        }
        return RegularSeries.of(stamp[0], Duration.ofSeconds(step), steps);
    }
}
