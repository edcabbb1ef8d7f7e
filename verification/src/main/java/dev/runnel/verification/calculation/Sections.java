package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.section.ArchSection;
import dev.runnel.hydraulics.section.BenchedChannel;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.Horseshoe;
import dev.runnel.hydraulics.section.MouthSection;
import dev.runnel.hydraulics.section.ProfileSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.SlottedSection;
import dev.runnel.hydraulics.section.TabulatedSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import dev.runnel.hydraulics.section.USection;
import dev.runnel.hydraulics.section.VInvertSection;
import dev.runnel.hydraulics.section.Wall;

/** The section that the inputs describe: a {@code shape}, circular if none is named, and its measures. */
final class Sections {
    /** The inputs {@link #of} knows. */
    static final String INPUTS = "wave_speed? shape? diameter? width? side_slope? height? fall? channel_depth?"
            + " chamber_width? bench_slope? wall_height? levels? widths? left? right?";

    private Sections() {}

    static CrossSection of(Inputs in) {
        String shape = in.has("shape") ? in.text("shape") : "circular";
        return switch (shape) {
            case "circular" -> CircularSection.ofDiameter(in.number("diameter"));
            case "rectangular" -> RectangularSection.open(in.number("width"));
            case "box" -> RectangularSection.box(in.number("width"), in.number("height"));
            case "trapezoidal" ->
                TrapezoidalSection.ofBedWidthAndSideSlope(in.number("width"), in.number("side_slope"));
            case "egg" -> Egg.normal(in.number("width"));
            case "widened-egg" -> Egg.widened(in.number("width"));
            case "depressed-egg" -> Egg.depressed(in.number("width"));
            case "sharp-egg" -> Egg.sharp(in.number("width"));
            case "inverted-egg" -> Egg.inverted(in.number("width"));
            case "horseshoe" -> Horseshoe.ofDiameter(in.number("diameter"));
            case "mouth" -> MouthSection.ofWidth(in.number("width"));
            case "slotted" ->
                SlottedSection.ofWaveSpeed(CircularSection.ofDiameter(in.number("diameter")), in.number("wave_speed"));
            case "u" -> USection.open(in.number("width"));
            case "covered-u" -> USection.covered(in.number("width"), in.number("height"));
            case "v" ->
                VInvertSection.ofWidthAndFall(in.number("width"), in.number("fall"))
                        .open();
            case "covered-v" ->
                VInvertSection.ofWidthAndFall(in.number("width"), in.number("fall"))
                        .coveredAt(in.number("height"));
            case "arch" -> ArchSection.of(in.number("width"), in.number("wall_height"));
            case "benched" -> benched(in).inChamberOfWidth(in.number("chamber_width"));
            case "tabulated" -> TabulatedSection.closed(in.sample("levels"), in.sample("widths"));
            case "open-tabulated" -> TabulatedSection.open(in.sample("levels"), in.sample("widths"));
            case "lopsided" -> ProfileSection.between(wall(in.sample("left")), wall(in.sample("right")));
            case "circular-mm" -> CircularSection.ofDiameterMm(in.number("width"));
            default ->
                throw new IllegalArgumentException("shape must be one of circular, rectangular, box, trapezoidal, egg,"
                        + " widened-egg, depressed-egg, sharp-egg, inverted-egg, horseshoe, mouth, slotted, u, covered-u, v,"
                        + " covered-v, arch, benched, tabulated, open-tabulated, lopsided, circular-mm, was \"" + shape
                        + "\"");
        };
    }

    /** Level benches are left as they come. */
    private static BenchedChannel benched(Inputs in) {
        BenchedChannel level = BenchedChannel.ofWidthAndDepth(in.number("width"), in.number("channel_depth"));
        return in.number("bench_slope") == 0 ? level : level.withBenchSlope(in.number("bench_slope"));
    }

    /** A wall of straight pieces through places and levels by turns. */
    private static Wall wall(double[] corners) {
        Wall wall = Wall.from(corners[0], corners[1]);
        for (int i = 2; i < corners.length; i += 2) {
            wall = wall.lineTo(corners[i], corners[i + 1]);
        }
        return wall;
    }

    /** Returns the depth that is asked for, the full height if there is none. */
    static double depth(Inputs in, CrossSection section) {
        return in.has("depth") ? in.number("depth") : section.height();
    }
}
