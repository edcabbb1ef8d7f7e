package dev.runnel.internal;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import org.apiguardian.api.API;

/** The known word that somebody probably meant. */
@API(status = API.Status.INTERNAL)
public final class Nearest {
    private static final int LONGEST = 100;

    private Nearest() {}

    /**
     * Returns the word with the fewest letters to be changed, added, dropped or swapped with their neighbour.
     *
     * @param word what was written; case does not matter
     * @param known the words there are
     * @return the nearest, if it needs no more changes than a third of its letters, rounded up
     */
    public static Optional<String> of(String word, Collection<String> known) {
        String best = "";
        int fewest = Integer.MAX_VALUE;
        for (String each : known) {
            int changes = word.length() > LONGEST ? LONGEST : changes(lower(word), lower(each));
            if (changes < fewest) {
                fewest = changes;
                best = each;
            }
        }
        return fewest <= (best.length() + 2) / 3 ? Optional.of(best) : Optional.empty();
    }

    /**
     * Returns the nearest word as the end of a message.
     *
     * @param word what was written
     * @param known the words there are
     * @return for example {@code ; did you mean "reason"?}, or nothing
     */
    public static String hint(String word, Collection<String> known) {
        return of(word, known).map(each -> "; did you mean \"" + each + "\"?").orElse("");
    }

    private static String lower(String text) {
        return text.toLowerCase(Locale.ROOT);
    }

    /** The optimal string alignment distance. */
    private static int changes(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int other = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(d[i - 1][j - 1] + other, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
                boolean swapped =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (swapped) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
