package dev.runnel.verification.listing;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.verification.Modules;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The listing shows everything that a caller could come to rely on, and the comparison tells what changed. */
class ListingBitesTest {
    private static final String PLANTED = "dev.runnel.verification.planted.verification";

    @Test
    void everythingVisibleIsListed() {
        String type = PLANTED + ".Listed";
        assertThat(ApiListing.of(Modules.planted(PLANTED), PLANTED))
                .filteredOn(line -> line.startsWith(type))
                .containsExactly(
                        type + " : abstract class<T extends Comparable<T>> extends " + PLANTED
                                + ".HiddenAncestor implements Comparable<" + type + "<T>> | STABLE",
                        type + "#CONSTANT : static double = 9.81 | STABLE",
                        type + "#inherited() : int | STABLE",
                        type + "#moving<U>(U?) : java.util.Optional<U> | EXPERIMENTAL",
                        type + "#new(int) : protected " + type + " | STABLE",
                        type + "#read(double[], java.util.List<? extends Number>) : static String? throws "
                                + "java.io.IOException | STABLE",
                        type + "#value() : protected abstract T | STABLE",
                        type + "$Kind : enum of OPEN, CLOSED | STABLE",
                        type + "$Kind#CLOSED : static " + type + "$Kind | STABLE",
                        type + "$Kind#OPEN : static " + type + "$Kind | STABLE",
                        type + "$Kind#valueOf(String) : static " + type + "$Kind | STABLE",
                        type + "$Kind#values() : static " + type + "$Kind[] | STABLE",
                        type + "$Result : record | STABLE",
                        type + "$Result#depth() : double | STABLE",
                        type + "$Result#equals(Object) : boolean | STABLE",
                        type + "$Result#hashCode() : int | STABLE",
                        type + "$Result#new(double) : " + type + "$Result | STABLE",
                        type + "$Result#toString() : String | STABLE");
    }

    @Test
    void aChangeIsShownWithTheCommandThatApprovesIt() {
        assertThat(ApiListing.difference("docs/api/x.txt", List.of("kept", "old"), List.of("kept", "new")))
                .isEqualTo("""
                        The public API is not the one approved in docs/api/x.txt (- gone, + new):
                        - old
                        + new
                        If the change is intended, and docs/api-policy.md allows it, record it and commit docs/api/x.txt with it:
                            mvn verify -Dapi=record
                        """);
        assertThat(ApiListing.difference("docs/api/x.txt", List.of("a"), List.of("a")))
                .isEmpty();
    }

    @Test
    void whatMayChangeIsListedOncePerType() {
        List<String> listing = List.of(
                "a.Pipe : class | STABLE",
                "a.Pipe#new() : a.Pipe | EXPERIMENTAL",
                "a.Weir : class | EXPERIMENTAL",
                "a.Weir#flow() : double | EXPERIMENTAL");
        assertThat(ExperimentalPage.of(module -> module.equals("hydraulics") ? listing : List.of(), name -> "too new"))
                .contains("- `a.Pipe#new()`: too new", "- `a.Weir`: too new")
                .doesNotContain("- `a.Weir#flow()`: too new")
                .filteredOn(line -> line.startsWith("Nothing"))
                .hasSize(3);
    }

    @Test
    void whatNoPrintConfirmsIsNotStable() {
        assertThat(Stability.mayBeStable("dev.runnel.hydraulics.section.CircularSection"))
                .isTrue();
        assertThat(Stability.mayBeStable("dev.runnel.timeseries.Machine")).isTrue();
        assertThat(Stability.mayBeStable("dev.runnel.timeseries.quality.Verdict"))
                .isFalse();
        assertThat(Stability.missing("dev.runnel.timeseries.quality.Verdict#toText()"))
                .contains("nothing a print could confirm");
    }
}
