package dev.runnel.verification.architecture;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import java.util.Set;
import java.util.stream.Collectors;

/** Calls whose answer depends on the default locale, zone or charset of the machine, on its clock, or on luck. */
final class MachineDefaults extends DescribedPredicate<JavaCall<?>> {
    /** Class and method, or class alone for all of it. */
    private static final Set<String> NEVER = Set.of(
            "java.util.Locale.getDefault",
            "java.util.TimeZone.getDefault",
            "java.time.ZoneId.systemDefault",
            "java.nio.charset.Charset.defaultCharset",
            "java.time.Clock.systemDefaultZone",
            "java.time.Clock.systemUTC",
            "java.lang.System.currentTimeMillis",
            "java.lang.System.nanoTime",
            "java.lang.Math.random",
            "java.util.concurrent.ThreadLocalRandom.current",
            "java.lang.String.formatted",
            "java.util.Date.<init>",
            "java.io.FileReader.<init>",
            "java.io.FileWriter.<init>");

    /** Class, method and the simple names of its parameters: the form that takes no locale, zone, charset or seed. */
    private static final Set<String> NEVER_IN_THIS_FORM = Set.of(
            "java.time.Instant.now()",
            "java.time.LocalDate.now()",
            "java.time.LocalTime.now()",
            "java.time.LocalDateTime.now()",
            "java.time.OffsetDateTime.now()",
            "java.time.ZonedDateTime.now()",
            "java.time.Year.now()",
            "java.time.YearMonth.now()",
            "java.time.format.DateTimeFormatter.ofPattern(String)",
            "java.lang.String.format(String,Object[])",
            "java.lang.String.toLowerCase()",
            "java.lang.String.toUpperCase()",
            "java.lang.String.getBytes()",
            "java.lang.String.<init>(byte[])",
            "java.lang.String.<init>(byte[],int,int)",
            "java.util.Formatter.<init>()",
            "java.util.Formatter.<init>(Appendable)",
            "java.util.Random.<init>()",
            "java.util.SplittableRandom.<init>()",
            "java.text.DecimalFormat.<init>(String)",
            "java.text.NumberFormat.getInstance()",
            "java.util.Scanner.<init>(InputStream)",
            "java.io.InputStreamReader.<init>(InputStream)",
            "java.io.OutputStreamWriter.<init>(OutputStream)",
            "java.io.PrintStream.format(String,Object[])",
            "java.io.PrintStream.printf(String,Object[])",
            "java.io.PrintWriter.format(String,Object[])",
            "java.io.PrintWriter.printf(String,Object[])",
            "java.io.PrintWriter.<init>(OutputStream)",
            "java.io.PrintWriter.<init>(String)",
            "java.io.PrintWriter.<init>(File)");

    MachineDefaults() {
        super("the answer depends on the machine");
    }

    @Override
    public boolean test(JavaCall<?> call) {
        String method = call.getTargetOwner().getName() + "." + call.getName();
        String form = call.getTarget().getRawParameterTypes().stream()
                .map(JavaClass::getSimpleName)
                .collect(Collectors.joining(",", method + "(", ")"));
        return NEVER.contains(method) || NEVER_IN_THIS_FORM.contains(form);
    }
}
