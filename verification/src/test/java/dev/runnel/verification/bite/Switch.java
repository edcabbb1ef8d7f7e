package dev.runnel.verification.bite;

/**
 * Called by patched code: in the place of each operator or constant that may be changed stands one of these calls with the
 * number of its change, and does what the library does unless that number is switched on. One for each copy of the library.
 */
public final class Switch {
    /** No change is switched on. */
    static final int NONE = -1;

    private static int on = NONE;
    private static boolean[] met = {};

    private Switch() {}

    /** Makes room for the changes from 0 on, of which none is switched on or met. */
    static void count(int changes) {
        on = NONE;
        met = new boolean[changes];
    }

    /** Switches a change on, or {@link #NONE}. */
    static void turn(int change) {
        on = change;
    }

    /** Whether the code of a change ran since this was asked of it last. */
    static boolean met(int change) {
        boolean before = met[change];
        met[change] = false;
        return before;
    }

    private static boolean isOn(int change) {
        met[change] = true;
        return change == on;
    }

    /** In the place of a constant. */
    public static double constant(double old, double changed, int change) {
        return isOn(change) ? changed : old;
    }

    /** In the place of a whole number. */
    public static int constant(int old, int changed, int change) {
        return isOn(change) ? changed : old;
    }

    /** In the place of a sum. */
    public static double plus(double a, double b, int change) {
        return isOn(change) ? a - b : a + b;
    }

    /** In the place of a sum. */
    public static int plus(int a, int b, int change) {
        return isOn(change) ? a - b : a + b;
    }

    /** In the place of a sum. */
    public static long plus(long a, long b, int change) {
        return isOn(change) ? a - b : a + b;
    }

    /** In the place of a difference. */
    public static double minus(double a, double b, int change) {
        return isOn(change) ? a + b : a - b;
    }

    /** In the place of a difference. */
    public static int minus(int a, int b, int change) {
        return isOn(change) ? a + b : a - b;
    }

    /** In the place of a difference. */
    public static long minus(long a, long b, int change) {
        return isOn(change) ? a + b : a - b;
    }

    /** In the place of a product. */
    public static double times(double a, double b, int change) {
        return isOn(change) ? a / b : a * b;
    }

    /** In the place of a product of whole numbers, which becomes a sum: most quotients would be zero. */
    public static int times(int a, int b, int change) {
        return isOn(change) ? a + b : a * b;
    }

    /** In the place of a quotient. */
    public static double over(double a, double b, int change) {
        return isOn(change) ? a * b : a / b;
    }

    /** In the place of a sign. */
    public static double negated(double a, int change) {
        return isOn(change) ? a : -a;
    }

    /** Before a jump that asks whether a comparison said less, or not less. */
    public static int less(int said, int change) {
        return isOn(change) ? said >= 0 ? -1 : 1 : said;
    }

    /** Before a jump that asks whether a comparison said greater, or not greater. */
    public static int greater(int said, int change) {
        return isOn(change) ? said > 0 ? -1 : 1 : said;
    }
}
