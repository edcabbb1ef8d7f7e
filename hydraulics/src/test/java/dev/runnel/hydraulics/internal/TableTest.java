package dev.runnel.hydraulics.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class TableTest {
    // Read anew for each test, so that each of them asks the reading, too.
    private final Table table = Table.read(TableTest.class, "small.csv");
    private final NumberTable all = NumberTable.read(TableTest.class, "small.csv");

    /** x 0, 2, 3 with y 10, 14, 20. */
    private final NumberTable first = all.where(1);

    @Test
    void columnsByName() {
        assertThat(table.numbers("y")).containsExactly(10, 14, 20, -1, -3);
        assertThat(table.texts("group")).containsExactly("1", "1", "1", "2", "2");
        assertThat(table.numbers()).hasDimensions(5, 4);
        assertThat(table.numbers()[3]).containsExactly(2, 5, -1, 4);
    }

    @Test
    void namesATableThatIsNotThere() {
        assertThatThrownBy(() -> Table.read(TableTest.class, "none.csv"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("no table none.csv beside dev.runnel.hydraulics.internal.TableTest");
    }

    @Test
    void aPartHasTheRowsOfItsFirstValueWithoutIt() {
        assertThat(first.rows()).hasSize(3);
        assertThat(first.rows().get(1)).containsExactly(2, 14, 2);
        assertThat(all.where(2).rows().get(1)).containsExactly(7, -3, 5);
        assertThat(all.where(3).rows()).isEmpty();
    }

    @Test
    void rowsAreCopies() {
        first.rows().get(0)[1] = 99;
        assertThat(first.rows().get(0)).containsExactly(0, 10, 1);
    }

    @Test
    void theLastRow() {
        assertThat(first.last(0)).isEqualTo(3);
        assertThat(first.last(1)).isEqualTo(20);
    }

    /** By hand: 2 a unit up to x = 2, then 6 a unit. */
    @Test
    void straightLinesBetweenRows() {
        for (double[] point : new double[][] {{0, 10}, {0.5, 11}, {2, 14}, {2.25, 15.5}, {3, 20}}) {
            assertThat(first.held(point[0], 1)).isEqualTo(point[1]);
            assertThat(first.prolonged(point[0], 1)).isEqualTo(point[1]);
        }
    }

    @Test
    void beyondTheEnds() {
        assertThat(first.held(-1, 1)).isEqualTo(10);
        assertThat(first.prolonged(-1, 1)).isEqualTo(10);
        assertThat(first.held(4, 1)).isEqualTo(20);
        assertThat(first.prolonged(4, 1)).isEqualTo(26);
        assertThat(first.held(4, 2)).isEqualTo(3);
    }
}
