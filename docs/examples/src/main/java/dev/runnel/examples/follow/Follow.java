package dev.runnel.examples.follow;

import dev.runnel.examples.review.SiteFolders;
import dev.runnel.examples.terminal.Terminal;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The command: follows a folder of sites, prints and writes alarms and findings, and may be killed at any moment. */
public final class Follow {
    private static final String LOCK = "follow.lock";
    private static final String ENDED = "ended";

    private final Path sites;
    private final Path folder;
    private final String how;
    private final Duration stale;
    private final PrintStream out;
    private final PrintStream err;
    private final Clock clock;
    private final int part;
    private final List<String> lines = new ArrayList<>();
    private final Map<Path, String> complaints = new TreeMap<>();
    private final Map<Path, FollowedSite> followed = new TreeMap<>();
    private final Map<String, String> kept = new TreeMap<>();
    private Map<String, String> written = Map.of();
    private OutputFiles outputs;

    private Follow(
            Path sites,
            Path folder,
            String how,
            Duration stale,
            PrintStream out,
            PrintStream err,
            Clock clock,
            int part) {
        this.outputs = OutputFiles.none(folder);
        this.sites = sites;
        this.folder = folder;
        this.how = how;
        this.stale = stale;
        this.out = out;
        this.err = err;
        this.clock = clock;
        this.part = part;
    }

    /**
     * Follows a folder; ends the process with 1 if a site cannot be followed.
     *
     * @param args the folder with the sites; the folder to write into; {@code once}, {@code end} or the seconds between two
     *     looks; minutes of silence after which a site is stale, or {@code off}
     */
    public static void main(String[] args) {
        int status = run(args, Terminal.out(), Terminal.err(), Clock.systemUTC());
        if (status != 0) {
            System.exit(status);
        }
    }

    /** Returns 0 if every site was followed and 1 if not. */
    static int run(String[] args, PrintStream out, PrintStream err, Clock clock) {
        return run(args, out, err, clock, GrowingFile.PART);
    }

    /** The same with the most bytes that are read at a time. */
    static int run(String[] args, PrintStream out, PrintStream err, Clock clock, int part) {
        try {
            if (args.length != 4) {
                throw new IllegalArgumentException(
                        "four arguments are wanted: a folder with the sites, a folder to write "
                                + "into, once or end or seconds, and minutes of silence or off");
            }
            String how =
                    args[2].equals("once") || args[2].equals("end") ? args[2] : "" + whole("poll", args[2], 86_400);
            Duration stale =
                    args[3].equals("off") ? Duration.ZERO : Duration.ofMinutes(whole("stale", args[3], 527_040));
            return new Follow(
                            Path.of(args[0]).toAbsolutePath().normalize(),
                            Path.of(args[1]).toAbsolutePath().normalize(),
                            how,
                            stale,
                            out,
                            err,
                            clock,
                            part)
                    .follow();
        } catch (IllegalArgumentException | UncheckedIOException e) {
            err.println("Follow: " + e.getMessage());
            return 1;
        }
    }

    private static int whole(String name, String text, int most) {
        if (!text.matches("[0-9]{1,6}") || Integer.parseInt(text) < 1 || Integer.parseInt(text) > most) {
            throw new IllegalArgumentException(
                    name + " must be a whole number from 1 to " + most + ", or a word, was \"" + text + "\"");
        }
        return Integer.parseInt(text);
    }

    private int follow() {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot make " + folder, e);
        }
        try (FileChannel channel =
                        FileChannel.open(folder.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                FileLock lock = lock(channel)) {
            Map<String, String> state = begin();
            if (state.containsKey(ENDED)) {
                throw new IllegalArgumentException(folder + ": the record was ended; write into another folder");
            }
            run(state, lock);
            return complaints.isEmpty() ? 0 : 1;
        } catch (IOException e) {
            throw new UncheckedIOException("cannot use " + folder, e);
        }
    }

    private FileLock lock(FileChannel channel) throws IOException {
        try {
            FileLock lock = channel.tryLock();
            if (lock != null) {
                return lock;
            }
        } catch (OverlappingFileLockException e) {
            // Held within this process: the same to the reader.
        }
        throw new IllegalArgumentException(folder + ": another process writes into this folder");
    }

    /** Reads the state, or makes the first one before anything else is written. */
    private Map<String, String> begin() throws IOException {
        if (!Files.exists(folder.resolve(StateFile.NAME))) {
            try (Stream<Path> inside = Files.list(folder)) {
                List<String> others = inside.map(path -> path.getFileName().toString())
                        .filter(name -> !name.equals(LOCK) && !name.equals(StateFile.NAME + ".new"))
                        .toList();
                if (!others.isEmpty()) {
                    throw new IllegalArgumentException(
                            folder + ": folder to write into must be new, empty, or hold a state, holds " + others);
                }
            }
            StateFile.write(folder, Map.of());
        }
        return StateFile.read(folder);
    }

    private void run(Map<String, String> state, FileLock lock) {
        outputs = OutputFiles.open(folder, state);
        kept.putAll(state);
        written = Map.copyOf(state);
        Set<Path> all = new TreeSet<>(SiteFolders.in(sites));
        all.forEach(this::begin);
        out.println("following " + followed.size() + " of " + all.size() + " sites");
        out.flush();
        while (lock.isValid()) {
            all.forEach(this::look);
            if (how.equals("end")) {
                followed.forEach((path, site) -> site.finish());
                kept.put(ENDED, "yes");
                commit();
            }
            if (how.equals("once") || how.equals("end") || !pause()) {
                return;
            }
            addNew(all);
        }
    }

    /** A site may come while others are followed; one that goes is waited for. */
    private void addNew(Set<Path> all) {
        try {
            for (Path site : SiteFolders.in(sites)) {
                if (all.add(site)) {
                    out.println("following " + site.getFileName() + " too");
                }
            }
        } catch (IllegalArgumentException | UncheckedIOException e) {
            complain(sites, String.valueOf(e.getMessage()));
        }
    }

    /** Begins a site where the state says, at the start or after a trouble. */
    private void begin(Path path) {
        tried(path, () -> followed.put(path, new FollowedSite(path, outputs, new TreeMap<>(kept), lines::add)));
    }

    /** Reads what has come, part by part; after each part all that is known is on the disk. */
    private void look(Path path) {
        tried(path, () -> {
            // With other books the site begins anew from its state, and says what has changed.
            if (followed.containsKey(path) && followed.get(path).hasOtherBooks()) {
                followed.remove(path);
            }
        });
        if (!followed.containsKey(path)) {
            begin(path);
        }
        FollowedSite site = followed.get(path);
        if (site == null) {
            return;
        }
        tried(path, () -> {
            site.look();
            boolean isMore = true;
            while (isMore) {
                isMore = site.step(part, how.equals("end"));
                if (!stale.isZero() && !isMore) {
                    site.judgeSilence(clock.instant(), stale);
                }
                site.save(kept);
                commit();
            }
            complaints.remove(path);
        });
    }

    /** A site in trouble stops no other. It goes on from the state at the next look, and is complained of once. */
    private void tried(Path path, Runnable task) {
        try {
            task.run();
        } catch (IllegalArgumentException | UncheckedIOException e) {
            followed.remove(path);
            String id = String.valueOf(path.getFileName());
            outputs.forget(id);
            lines.clear();
            complain(path, id + " cannot be followed. " + e.getMessage());
        }
    }

    private void complain(Path path, String complaint) {
        if (!complaint.equals(complaints.put(path, complaint))) {
            err.println("Follow: " + complaint);
            err.flush();
        }
    }

    private void commit() {
        outputs.commit(kept);
        if (!kept.equals(written)) {
            StateFile.write(folder, kept);
            written = Map.copyOf(kept);
        }
        say();
    }

    private void say() {
        lines.forEach(out::println);
        lines.clear();
        out.flush();
    }

    private boolean pause() {
        try {
            Thread.sleep(Duration.ofSeconds(Integer.parseInt(how)).toMillis());
            return true;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
