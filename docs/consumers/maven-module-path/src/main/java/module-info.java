module consumer {
    requires dev.runnel.timeseries;
    requires dev.runnel.hydraulics;
    requires dev.runnel.rainfall;
    // Holds the annotations of our class files; without it javac warns of each ("unknown enum constant Status.STABLE").
    requires static org.apiguardian.api;
}
