package dev.runnel.verification;

import org.apiguardian.api.API;

/**
 * A publication and how its figures came here.
 *
 * @param citation author, year, title, edition in one line
 * @param provenance how the figures were obtained
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Source(String citation, Provenance provenance) {
    /**
     * Returns the source with the parts of a citation put in one line.
     *
     * @param author author or issuing body
     * @param year year of publication, or {@code undated}
     * @param work title of the publication
     * @param edition edition; empty if there is none
     * @param provenance how the figures were obtained
     * @return the source
     */
    public static Source of(String author, String year, String work, String edition, Provenance provenance) {
        return new Source(author + " (" + year + "), " + work + (edition.isEmpty() ? "" : ", " + edition), provenance);
    }

    @Override
    public String toString() {
        return provenance == Provenance.PUBLISHED ? citation : citation + " [" + provenance + "]";
    }
}
