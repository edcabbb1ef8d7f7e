package dev.runnel.verification.table;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.verification.Check;
import dev.runnel.verification.Status;
import dev.runnel.verification.Tables;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The file pair that the guide shows is a table that runs. */
class GuideTest {
    private static final String FENCE = "```";

    @TempDir
    Path folder;

    @Test
    void theFilePairOfTheGuideRuns() throws Exception {
        String guide = Files.readString(Path.of("..", "docs", "verification.md"));
        Path descriptor =
                Tables.write(folder, "my-chart", block(guide, "`my-chart.table`"), block(guide, "`my-chart.csv`"));
        assertThat(PublishedTable.read(descriptor).checks().stream().map(Check::status))
                .containsExactly(Status.PASS, Status.PASS, Status.EXCLUDED);
    }

    /** Returns the fenced block that follows the file name. */
    private static String block(String guide, String after) {
        int open = guide.indexOf('\n', guide.indexOf(FENCE, guide.indexOf(after + ","))) + 1;
        return guide.substring(open, guide.indexOf(FENCE, open));
    }
}
