package dev.runnel.examples.review;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Finds the sites of a folder: the folder itself, or the folders in it that hold a site file. */
public final class SiteFolders {
    private SiteFolders() {}

    /**
     * Returns the folders of the sites.
     *
     * @param folder the folder of one site, or of the folders of sites
     * @return the folders, in order of their names
     * @throws IllegalArgumentException if there is none
     */
    public static List<Path> in(Path folder) {
        if (!Files.exists(folder)) {
            throw new IllegalArgumentException("folder must be there, was " + folder);
        }
        if (!Files.isDirectory(folder)) {
            throw new IllegalArgumentException("folder must be a folder, was the file " + folder);
        }
        if (Files.isRegularFile(folder.resolve(SiteFile.NAME))) {
            return List.of(folder);
        }
        try (Stream<Path> inside = Files.list(folder)) {
            List<Path> sites = inside.filter(path -> Files.exists(path.resolve(SiteFile.NAME)))
                    .sorted()
                    .toList();
            if (sites.isEmpty()) {
                throw new IllegalArgumentException("folder must hold " + SiteFile.NAME
                        + ", or folders that hold one, was "
                        + folder + "; the least such file has three lines: diameter = 450 mm, gradient = 1:150, "
                        + "roughness = manning 0.013 (docs/site-review.md lists all keys)");
            }
            return sites;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
