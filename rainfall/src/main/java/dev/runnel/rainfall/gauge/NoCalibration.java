package dev.runnel.rainfall.gauge;

/** Every tip is worth its nominal depth. */
enum NoCalibration implements Calibration {
    INSTANCE;

    @Override
    public double factor(double recordedMmPerHour, double tipMm) {
        return 1;
    }

    @Override
    public String toString() {
        return "no calibration";
    }
}
