package dev.runnel.hydraulics.section;

import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Objects;
import java.util.stream.DoubleStream;
import org.apiguardian.api.API;

/**
 * A closed section with a narrow slot (Preissmann's) upon its soffit: depths above the soffit are pressure levels, so that one
 * equation of open flow serves free and pressurised water. Immutable and thread-safe.
 *
 * <pre>
 * A = A(h_s) + T_s (h − h_s)     T_s = g A_full/a²
 * </pre>
 *
 * <p>h level above the invert (m), h_s where the crown has narrowed to the slot (m), T_s width of the slot (m), a speed of a pressure wave (m/s). Below h_s it is the
 * section itself. The slot is no wall: the perimeter above the soffit
 * is that of the full section. Source: J. A. Cunge, F. M. Holly, A. Verwey, Practical Aspects of Computational River Hydraulics, 1980
 * (from memory).
 *
 * <p>What it is not: a description of trapped air or of pressures below the soffit's.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SlottedSection implements CrossSection {
    private static final double STANDARD_GRAVITY = 9.80665;

    private final ClosedSection pipe;
    private final double slot;
    private final double height;
    /** Where the crown is as narrow as the slot. */
    private final double mouth;

    private final double area;
    private final double moment;

    private SlottedSection(ClosedSection pipe, double slot) {
        this.pipe = pipe;
        this.slot = slot;
        this.height = pipe.height();
        this.mouth = pipe.topWidth(height) >= slot
                ? height
                : Roots.between(depth -> pipe.topWidth(depth) - slot, height / 2, height);
        this.area = pipe.area(mouth);
        this.moment = area * pipe.centroidDepth(mouth);
    }

    /**
     * Returns the section with a slot of a width.
     *
     * @param pipe the closed section
     * @param slotWidth width of the slot T_s, m; greater than 0, at most a tenth of the full area over the height
     * @return the section
     * @throws IllegalArgumentException if {@code slotWidth} is outside its range
     */
    public static SlottedSection ofWidth(ClosedSection pipe, double slotWidth) {
        Objects.requireNonNull(pipe, "pipe");
        Require.positive("slotWidth", slotWidth, "m");
        double widest = pipe.fullArea() / pipe.height() / 10;
        return new SlottedSection(pipe, Require.inRange("slotWidth", slotWidth, 0, widest, "m"));
    }

    /**
     * Returns the section whose slot lets a disturbance travel at a stated speed, T_s = g A_full/a² under standard gravity.
     *
     * @param pipe the closed section
     * @param waveSpeed speed a of a pressure wave, m/s; greater than √(10 g H), at most 1500; 1000 in a stiff pipe without air (common
     *     practice)
     * @return the section
     * @throws IllegalArgumentException if {@code waveSpeed} is outside its range
     */
    public static SlottedSection ofWaveSpeed(ClosedSection pipe, double waveSpeed) {
        Objects.requireNonNull(pipe, "pipe");
        double slowest = Math.sqrt(10 * STANDARD_GRAVITY * pipe.height());
        if (!(waveSpeed > slowest && waveSpeed <= 1500)) {
            throw new IllegalArgumentException("waveSpeed must be greater than " + Text.significant(slowest, 4)
                    + " and at most 1500 m/s, was " + Text.number(waveSpeed));
        }
        return new SlottedSection(pipe, STANDARD_GRAVITY * pipe.fullArea() / (waveSpeed * waveSpeed));
    }

    /**
     * Returns the section below the slot.
     *
     * @return the closed section
     */
    public ClosedSection pipe() {
        return pipe;
    }

    /**
     * Returns the width of the slot.
     *
     * @return width T_s, m
     */
    public double slotWidth() {
        return slot;
    }

    /** Returns +∞: the slot has no end. */
    @Override
    public double height() {
        return Double.POSITIVE_INFINITY;
    }

    @Override
    public double area(double depth) {
        Depths.checked(depth, height());
        return depth <= mouth ? pipe.area(depth) : area + slot * (depth - mouth);
    }

    @Override
    public double wettedPerimeter(double depth) {
        Depths.checked(depth, height());
        return pipe.wettedPerimeter(Math.min(depth, height));
    }

    @Override
    public double topWidth(double depth) {
        Depths.checked(depth, height());
        return depth < mouth ? pipe.topWidth(depth) : slot;
    }

    @Override
    public double centroidDepth(double depth) {
        Depths.checked(depth, height());
        if (depth <= mouth) {
            return pipe.centroidDepth(depth);
        }
        double above = depth - mouth;
        return (moment + area * above + slot * above * above / 2) / area(depth);
    }

    @Override
    public double depthForArea(double wanted) {
        Depths.checkedArea(wanted, Double.POSITIVE_INFINITY);
        return wanted <= area ? pipe.depthForArea(wanted) : mouth + (wanted - area) / slot;
    }

    @Override
    public double[] breakDepths() {
        return DoubleStream.concat(Arrays.stream(pipe.breakDepths()), DoubleStream.of(mouth, height))
                .sorted()
                .distinct()
                .toArray();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SlottedSection
                && pipe.equals(((SlottedSection) other).pipe)
                && Double.compare(slot, ((SlottedSection) other).slot) == 0;
    }

    @Override
    public int hashCode() {
        return pipe.hashCode() * 31 + Double.hashCode(slot);
    }

    @Override
    public String toString() {
        return "SlottedSection[" + pipe + ", slot " + Text.significant(slot, 4) + " m]";
    }
}
