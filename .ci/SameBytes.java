import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Builds all jars twice from scratch and compares them byte for byte: {@code java .ci/SameBytes.java}, in any shell. */
public class SameBytes {
    private static final List<String> MODULES =
            List.of("timeseries", "hydraulics", "rainfall", "verification", "docs/examples");

    public static void main(String[] arguments) throws Exception {
        Map<String, String> first = build();
        Map<String, String> second = build();
        first.forEach((jar, hash) -> System.out.println(hash + "  " + jar));
        if (first.size() < MODULES.size()) {
            System.out.println("fewer jars than modules: nothing is shown");
            System.exit(2);
        }
        boolean same = first.equals(second);
        System.out.println(same ? "Both builds gave the same bytes." : "The second build differs: " + second);
        System.exit(same ? 0 : 1);
    }

    private static Map<String, String> build() throws Exception {
        String maven = File.separatorChar == '\\' ? "mvn.cmd" : "mvn";
        int status = new ProcessBuilder(maven, "-q", "clean", "package", "-P", "quick", "-DskipTests")
                .inheritIO()
                .start()
                .waitFor();
        if (status != 0) {
            System.exit(2);
        }
        Map<String, String> hashes = new TreeMap<>();
        for (String module : MODULES) {
            try (var jars = Files.newDirectoryStream(Path.of(module, "target"), "*.jar")) {
                for (Path jar : jars) {
                    hashes.put(module + "/" + jar.getFileName(), hash(jar));
                }
            }
        }
        return hashes;
    }

    private static String hash(Path jar) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(jar)));
    }
}
