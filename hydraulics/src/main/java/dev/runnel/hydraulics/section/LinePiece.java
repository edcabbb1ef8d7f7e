package dev.runnel.hydraulics.section;

/** A straight piece from (x0, low) with dx/dy = slope. */
record LinePiece(double x0, double low, double slope, double high) implements Piece {
    static LinePiece between(double x0, double y0, double x1, double y1) {
        return new LinePiece(x0, y0, (x1 - x0) / (y1 - y0), y1);
    }

    @Override
    public double x(double level) {
        return x0 + slope * (level - low);
    }

    @Override
    public double length(double level) {
        return (level - low) * Math.sqrt(1 + slope * slope);
    }

    @Override
    public double area(double level) {
        double h = level - low;
        return h * (x0 + slope * h / 2);
    }

    @Override
    public double moment(double level) {
        double h = level - low;
        return h * h * (x0 / 2 + slope * h / 6);
    }

    @Override
    public Piece above(double level) {
        return level <= low
                ? new LinePiece(x0, low - level, slope, high - level)
                : new LinePiece(x(level), 0, slope, high - level);
    }

    @Override
    public Piece inverted(double height) {
        return new LinePiece(x(high), height - high, -slope, height - low);
    }

    @Override
    public Piece endless() {
        return new LinePiece(x0, low, slope, Double.POSITIVE_INFINITY);
    }
}
