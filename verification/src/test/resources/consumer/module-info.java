module consumer {
    requires dev.runnel.timeseries;
    requires dev.runnel.hydraulics;
    requires dev.runnel.rainfall;
}
