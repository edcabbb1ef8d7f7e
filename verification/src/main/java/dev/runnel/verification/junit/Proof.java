package dev.runnel.verification.junit;

import dev.runnel.verification.Selection;
import dev.runnel.verification.table.TableFolder;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.apiguardian.api.API;

/**
 * Where a parameterised test finds the tables.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Proof {
    private Proof() {}

    /**
     * Returns all tables that are shipped with Runnel.
     *
     * @return the tables, and what could not be read as one that fails
     */
    public static Stream<TableProof> tables() {
        return tables(Selection.all());
    }

    /**
     * Returns those tables that are shipped with Runnel and hold wanted values.
     *
     * @param selection which values
     * @return the tables
     */
    public static Stream<TableProof> tables(Selection selection) {
        return of(TableFolder.shipped(), selection);
    }

    /**
     * Returns the tables of a folder and below it.
     *
     * @param folder the folder; a folder that cannot be read or holds no table fails
     * @return the tables
     */
    public static Stream<TableProof> tables(Path folder) {
        return of(TableFolder.read(folder), Selection.all());
    }

    private static Stream<TableProof> of(TableFolder folder, Selection selection) {
        return Stream.concat(
                folder.problems().stream().map(TableProof::broken),
                folder.tables().stream()
                        .filter(table -> table.count(selection) > 0)
                        .map(table -> TableProof.of(table, selection)));
    }
}
