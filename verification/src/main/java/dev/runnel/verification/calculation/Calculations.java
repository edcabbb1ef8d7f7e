package dev.runnel.verification.calculation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apiguardian.api.API;

/**
 * All calculations by name.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Calculations {
    private static final Map<String, Calculation> ALL = index();

    private Calculations() {}

    /**
     * Returns a calculation.
     *
     * @param name its name
     * @return the calculation, or for a name that begins with {@code refusal.} whether the one of the rest refuses its inputs;
     *     empty if there is none of that name
     */
    public static Optional<Calculation> find(String name) {
        return name.startsWith(Calculation.REFUSAL)
                ? find(name.substring(Calculation.REFUSAL.length())).map(Calculation::refusal)
                : Optional.ofNullable(ALL.get(name));
    }

    /**
     * Returns all calculations.
     *
     * @return the list, module by module
     */
    public static List<Calculation> all() {
        return List.copyOf(ALL.values());
    }

    private static Map<String, Calculation> index() {
        Map<String, Calculation> byName = new LinkedHashMap<>();
        Stream.of(
                        StatisticsCalculations.all(),
                        AlarmCalculations.all(),
                        AlarmBookCalculations.all(),
                        OverflowCalculations.all(),
                        TrendCalculations.all(),
                        ChangeCalculations.all(),
                        ChangeBookCalculations.all(),
                        QualityCalculations.all(),
                        QualityBookCalculations.all(),
                        CorrectionCalculations.all(),
                        SeriesEdgeCalculations.all(),
                        SeriesCornerCalculations.all(),
                        BalanceCalculations.all(),
                        InfiltrationCalculations.all(),
                        SeriesCalculations.all(),
                        SurveyCalculations.all(),
                        SectionCalculations.all(),
                        FlowCalculations.all(),
                        ArrayCalculations.all(),
                        EnergyCalculations.all(),
                        VariedFlowCalculations.all(),
                        FlowEdgeCalculations.all(),
                        ChainCalculations.all(),
                        RelationCalculations.all(),
                        SiltedCalculations.all(),
                        WaterCalculations.all(),
                        MonitorCalculations.all(),
                        RecordCalculations.all(),
                        BaselineCalculations.all(),
                        SiteCalculations.all(),
                        WatchCalculations.all(),
                        EvidenceCalculations.all(),
                        WeirCalculations.all(),
                        CrestCalculations.all(),
                        FlumeCalculations.all(),
                        StructureCalculations.all(),
                        StructureEdgeCalculations.all(),
                        GaugingCalculations.all(),
                        GaugingSheetCalculations.all(),
                        RatingCalculations.all(),
                        SimulationCalculations.all(),
                        ModelCalculations.all(),
                        FactorCalculations.all(),
                        GaugeCalculations.all(),
                        EventCalculations.all(),
                        DdfCalculations.all(),
                        DesignCalculations.all(),
                        ArealCalculations.all(),
                        ResponseCalculations.all(),
                        StormResponseCalculations.all(),
                        RainGaugeCalculations.all(),
                        GaugeBookCalculations.all(),
                        GaugeComparisonCalculations.all(),
                        RainEventCalculations.all(),
                        RainEdgeCalculations.all(),
                        RainCornerCalculations.all(),
                        RainPlaceCalculations.all(),
                        RarityCalculations.all(),
                        ScaledLimitCalculations.all(),
                        EventBookCalculations.all(),
                        RainDayCalculations.all(),
                        RunoffCalculations.all(),
                        RegionCalculations.all(),
                        FrequencyCalculations.all(),
                        PeaksCalculations.all(),
                        LowOutlierCalculations.all(),
                        OtherLawCalculations.all(),
                        TrendFitCalculations.all(),
                        SampleLawCalculations.all(),
                        LongRecordCalculations.all())
                .flatMap(List::stream)
                .forEach(calculation -> {
                    if (byName.put(calculation.name(), calculation) != null) {
                        throw new IllegalStateException("two calculations are named " + calculation.name());
                    }
                });
        return byName;
    }
}
