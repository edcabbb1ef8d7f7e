package dev.runnel.hydraulics.section;

import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;

/** Closed sections that nobody builds: straight pieces, arcs, ledges and necks at random, mirrored or not. */
public final class RandomWalls {
    private RandomWalls() {}

    public static Arbitrary<ClosedSection> closed() {
        return Arbitraries.longs()
                .map(RandomWalls::closed)
                .filter(Optional::isPresent)
                .map(Optional::get);
    }

    /** The section of a seed; empty where its walls crossed. */
    public static Optional<ClosedSection> closed(long seed) {
        Random random = new Random(seed);
        double size = Math.pow(10, 3 * random.nextDouble() - 2);
        double top = 3 * size * random.nextDouble();
        try {
            return Optional.of(
                    random.nextBoolean()
                            ? wall(random, size, top, 1).mirrored()
                            : ProfileSection.between(wall(random, size, top, -1), wall(random, size, top, 1)));
        } catch (IllegalArgumentException crossedOrFlat) {
            return Optional.empty();
        }
    }

    private static Wall wall(Random random, double size, double top, int side) {
        double x = random.nextInt(3) == 0 ? 0 : side * size * random.nextDouble();
        double level = 0;
        Wall wall = Wall.from(x, 0);
        int pieces = 1 + random.nextInt(5);
        for (int i = 0; i < pieces; i++) {
            double endX = side * size * random.nextDouble();
            boolean ledge = i > 0 && random.nextInt(4) == 0;
            double rise = ledge ? 0 : (top - level) / 2 * random.nextDouble();
            double end = i == pieces - 1 ? top : level + rise;
            wall = random.nextInt(3) == 0 && end > level
                    ? arc(wall, x, level, endX, end, 6 * random.nextDouble() - 3)
                    : wall.lineTo(endX, end);
            x = endX;
            level = end;
        }
        return wall;
    }

    /** Around a centre on the middle line of the chord, if the arc then rises all the way; else the chord. */
    private static Wall arc(Wall wall, double x, double level, double endX, double end, double bend) {
        double centreX = (x + endX) / 2 - bend * (end - level);
        double centreLevel = (level + end) / 2 + bend * (endX - x);
        try {
            return wall.arcTo(endX, end, centreX, centreLevel);
        } catch (IllegalArgumentException fallsOnTheWay) {
            return wall.lineTo(endX, end);
        }
    }
}
