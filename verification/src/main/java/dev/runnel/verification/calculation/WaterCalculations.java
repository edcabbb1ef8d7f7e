package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.water.Air;
import dev.runnel.hydraulics.water.Water;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Properties of liquid water at 0.1 MPa, and the speed of sound in air. */
final class WaterCalculations {
    private WaterCalculations() {}

    static List<Calculation> all() {
        return List.of(
                ofTemperature("water.vapour-pressure", "Pa", Water::vapourPressure),
                Calculation.of(
                        "hydraulics",
                        "air.level-error",
                        "m",
                        "celsius assumed distance",
                        in -> Air.atTemperature(in.number("celsius"))
                                .levelError(Air.atTemperature(in.number("assumed")), in.number("distance"))),
                ofTemperature("water.density", "kg/m3", Water::density),
                ofTemperature("water.dynamic-viscosity", "Pa s", Water::dynamicViscosity),
                ofTemperature("water.kinematic-viscosity", "m2/s", Water::kinematicViscosity),
                ofTemperature("water.speed-of-sound", "m/s", Water::speedOfSound),
                Calculation.of(
                        "hydraulics",
                        "air.speed-of-sound",
                        "m/s",
                        "celsius humidity carbon_dioxide",
                        in -> Air.atTemperature(in.number("celsius"))
                                .withHumidity(in.number("humidity"))
                                .withCarbonDioxide(in.number("carbon_dioxide"))
                                .speedOfSound()));
    }

    private static Calculation ofTemperature(String name, String unit, ToDoubleFunction<Water> question) {
        return Calculation.of(
                "hydraulics",
                name,
                unit,
                "celsius",
                in -> question.applyAsDouble(Water.atTemperature(in.number("celsius"))));
    }
}
