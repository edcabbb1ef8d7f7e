package dev.runnel.flink;

import dev.runnel.rainfall.event.RainfallEvent;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** A text of a result with every digit of every figure, since {@code toString} rounds. */
final class Exact {
    private Exact() {}

    static String text(Object value) {
        if (value instanceof RainfallEvent event) {
            return text(List.of(
                    event.interval(),
                    event.depthMm(),
                    event.peaks(),
                    event.antecedent(),
                    event.missingSteps(),
                    event.missingStepsAfter(),
                    event.isOpenAtStart(),
                    event.isOpenAtEnd()));
        }
        if (value instanceof List<?> list) {
            return list.stream().map(Exact::text).collect(Collectors.joining(";", "[", "]"));
        }
        if (value instanceof Optional<?> optional) {
            return optional.map(Exact::text).orElse("none");
        }
        if (value instanceof Record result) {
            StringBuilder text = new StringBuilder(result.getClass().getSimpleName()).append('(');
            for (RecordComponent component : result.getClass().getRecordComponents()) {
                try {
                    text.append(text(component.getAccessor().invoke(result))).append(';');
                } catch (ReflectiveOperationException e) {
                    throw new LinkageError("every component of a result is public", e);
                }
            }
            return text.append(')').toString();
        }
        return String.valueOf(value);
    }
}
