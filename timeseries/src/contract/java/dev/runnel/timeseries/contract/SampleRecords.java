package dev.runnel.timeseries.contract;

import java.util.List;

/** The rules of a module with their records; public, with a public constructor of no arguments, for the other process. */
public interface SampleRecords {
    /** Every rule of the module. A new one gets a line there. */
    List<SampleRecord<?, ?, ?>> all();
}
