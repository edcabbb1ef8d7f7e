package dev.runnel.timeseries.contract;

import net.jqwik.api.FixedSeedMode;
import net.jqwik.api.lifecycle.AroundPropertyHook;
import net.jqwik.api.lifecycle.PropagationMode;
import net.jqwik.api.lifecycle.PropertyAttributes;
import net.jqwik.api.lifecycle.PropertyExecutionResult;
import net.jqwik.api.lifecycle.PropertyExecutor;
import net.jqwik.api.lifecycle.PropertyLifecycleContext;

/**
 * The cases of each property: the same ones in every build, so that a build that passed passes again. Who looks for faults
 * asks for others, and for more of them: {@code -Ddraws=7} draws by another number, {@code -Ddraws.times=20} twenty times as
 * many.
 */
public final class SteadyDraws implements AroundPropertyHook {
    private static final int TRIES = 1000;

    @Override
    public PropagationMode propagateTo() {
        return PropagationMode.ALL_DESCENDANTS;
    }

    @Override
    public PropertyExecutionResult aroundProperty(PropertyLifecycleContext context, PropertyExecutor property) {
        PropertyAttributes attributes = context.attributes();
        if (attributes.seed().isEmpty()) {
            String name = context.containerClass().getName() + "#"
                    + context.targetMethod().getName();
            attributes.setSeed(String.valueOf(31L * name.hashCode() + Long.getLong("draws", 0)));
            attributes.setWhenFixedSeed(FixedSeedMode.ALLOW);
        }
        int times = Integer.getInteger("draws.times", 1);
        if (times > 1) {
            attributes.setTries(times * attributes.tries().orElse(TRIES));
        }
        return property.execute();
    }
}
