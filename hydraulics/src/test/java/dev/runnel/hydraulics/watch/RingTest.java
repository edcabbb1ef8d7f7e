package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.internal.StateText;
import org.junit.jupiter.api.Test;

/** Rows of two columns, 10 n and 10 n + 1, under the number n. */
class RingTest {
    private static Ring ring(int capacity, long... numbers) {
        Ring ring = new Ring(capacity, 2);
        for (long number : numbers) {
            ring.add(number, 10.0 * number, 10.0 * number + 1);
        }
        return ring;
    }

    private static void assertRows(Ring ring, long... numbers) {
        assertThat(ring.size()).isEqualTo(numbers.length);
        for (int i = 0; i < numbers.length; i++) {
            assertThat(ring.number(i)).isEqualTo(numbers[i]);
            assertThat(ring.value(i, 0)).isEqualTo(10.0 * numbers[i]);
            assertThat(ring.value(i, 1)).isEqualTo(10.0 * numbers[i] + 1);
        }
    }

    @Test
    void keepsTheLast() {
        assertRows(ring(3));
        assertRows(ring(3, 4, 5), 4, 5);
        assertRows(ring(3, 4, 5, 7), 4, 5, 7);
        assertRows(ring(3, 4, 5, 7, 8), 5, 7, 8);
        assertRows(ring(3, 1, 2, 4, 5, 7, 8, 9), 7, 8, 9);
    }

    @Test
    void findsByNumber() {
        for (Ring ring : new Ring[] {ring(4, 4, 6, 7), ring(3, 1, 2, 4, 6, 7)}) {
            assertThat(ring.from(0)).isZero();
            assertThat(ring.from(4)).isZero();
            assertThat(ring.from(5)).isEqualTo(1);
            assertThat(ring.from(6)).isEqualTo(1);
            assertThat(ring.from(7)).isEqualTo(2);
            assertThat(ring.from(8)).isEqualTo(3);
        }
        assertThat(ring(3).from(5)).isZero();
    }

    @Test
    void columnsOfAllOrOfAPart() {
        Ring ring = ring(3, 1, 2, 4, 6, 7);
        assertThat(ring.column(0, 0)).containsExactly(40, 60, 70);
        assertThat(ring.column(1, 1)).containsExactly(61, 71);
        assertThat(ring.column(0, 2, 1)).containsExactly(41, 61);
        assertThat(ring.column(2, 2, 1)).isEmpty();
    }

    @Test
    void dropsAtEitherEnd() {
        Ring ring = ring(4, 1, 2, 4, 6, 7, 9);
        ring.dropBefore(6);
        assertRows(ring, 6, 7, 9);
        ring.add(11, 110, 111);
        ring.add(12, 120, 121);
        assertRows(ring, 7, 9, 11, 12);
        ring.dropFrom(11);
        assertRows(ring, 7, 9);
        ring.dropLast();
        assertRows(ring, 7);
        ring.dropBefore(7);
        assertRows(ring, 7);
        ring.clear();
        assertRows(ring);
        ring.add(13, 130, 131);
        assertRows(ring, 13);
    }

    @Test
    void goesOnFromText() {
        StateText text = StateText.of("ring", 1);
        ring(3, 1, 2, 4, 6).write(text, "rows");
        Ring other = ring(3, 3, 5, 7, 9);
        other.read(text, "rows");
        assertRows(other, 2, 4, 6);
        other.add(8, 80, 81);
        assertRows(other, 4, 6, 8);
        String refused = "state rows must hold up to 2 rows of 2 values, was 3 rows and 6 values";
        assertThatThrownBy(() -> ring(2).read(text, "rows"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(refused);
        assertThatThrownBy(() -> new Ring(3, 3).read(text, "rows"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("state rows must hold up to 3 rows of 3 values, was 3 rows and 6 values");
    }
}
