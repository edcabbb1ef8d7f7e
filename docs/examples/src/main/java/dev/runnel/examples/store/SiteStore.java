package dev.runnel.examples.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The tables of some sites. One connection, one thread.
 *
 * <p>{@link #take} is one transaction: the readings, what the machines told of them and what the machines know then are
 * there together or not at all. So a process may end at any moment. Who sends readings sends again what was not
 * confirmed: a reading that is there already is passed over, and one that comes after later ones goes to a table of its own.
 */
final class SiteStore {
    private static final List<String> TABLES = List.of(
            "CREATE TABLE IF NOT EXISTS reading (site VARCHAR, at TIMESTAMP(9) WITH TIME ZONE, depth DOUBLE PRECISION,"
                    + " velocity DOUBLE PRECISION, PRIMARY KEY (site, at))",
            "CREATE TABLE IF NOT EXISTS refused (site VARCHAR, at TIMESTAMP(9) WITH TIME ZONE, depth DOUBLE PRECISION,"
                    + " velocity DOUBLE PRECISION, PRIMARY KEY (site, at))",
            // The number makes a row that is written twice an error, not a second alarm.
            "CREATE TABLE IF NOT EXISTS told (site VARCHAR, detector VARCHAR, number BIGINT, text VARCHAR,"
                    + " PRIMARY KEY (site, detector, number))",
            "CREATE TABLE IF NOT EXISTS machine (site VARCHAR, detector VARCHAR, told BIGINT, state VARCHAR,"
                    + " PRIMARY KEY (site, detector))");

    private final Connection connection;
    private final List<Detector<?, ?, ?>> detectors;

    private SiteStore(Connection connection, List<Detector<?, ?, ?>> detectors) {
        this.connection = connection;
        this.detectors = List.copyOf(detectors);
    }

    /** The store on a connection, which it uses alone; makes the tables if they are not there. */
    static SiteStore on(Connection connection, List<Detector<?, ?, ?>> detectors) throws SQLException {
        connection.setAutoCommit(false);
        try (Statement statement = connection.createStatement()) {
            for (String table : TABLES) {
                statement.execute(table);
            }
        }
        connection.commit();
        return new SiteStore(connection, detectors);
    }

    /**
     * Takes readings of a site in the order of time.
     *
     * @return what was told, once it is safe in the database
     */
    List<String> take(String site, List<StoredReading> readings) throws SQLException {
        try {
            List<StoredReading> fresh = keep(site, readings);
            List<String> told = new ArrayList<>();
            for (Detector<?, ?, ?> detector : detectors) {
                told.addAll(run(detector, site, fresh));
            }
            connection.commit();
            return told;
        } catch (SQLException | RuntimeException e) {
            connection.rollback();
            throw e;
        }
    }

    /** Stores what is later than all that is there, and returns it; what came too late goes to the refused. */
    private List<StoredReading> keep(String site, List<StoredReading> readings) throws SQLException {
        Instant last = last(site).orElse(Instant.MIN);
        List<StoredReading> fresh = new ArrayList<>();
        for (StoredReading reading : readings) {
            if (reading.time().isAfter(last)) {
                insert("INSERT INTO reading VALUES (?, ?, ?, ?)", site, reading);
                fresh.add(reading);
                last = reading.time();
            } else if (!isThere(site, reading)) {
                insert("MERGE INTO refused KEY (site, at) VALUES (?, ?, ?, ?)", site, reading);
            }
        }
        return fresh;
    }

    private boolean isThere(String site, StoredReading reading) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement("SELECT 1 FROM reading WHERE site = ? AND at = ?")) {
            query.setString(1, site);
            query.setObject(2, reading.time());
            try (ResultSet rows = query.executeQuery()) {
                return rows.next();
            }
        }
    }

    private void insert(String sql, String site, StoredReading reading) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(sql)) {
            insert.setString(1, site);
            insert.setObject(2, reading.time());
            insert.setObject(3, orNull(reading.depth()));
            insert.setObject(4, orNull(reading.velocity()));
            insert.executeUpdate();
        }
    }

    /** What is missing is NaN here and null there. */
    private static @Nullable Double orNull(double value) {
        return Double.isNaN(value) ? null : value;
    }

    private List<String> run(Detector<?, ?, ?> detector, String site, List<StoredReading> fresh) throws SQLException {
        long number = 0;
        Optional<String> state = Optional.empty();
        try (PreparedStatement query =
                connection.prepareStatement("SELECT told, state FROM machine WHERE site = ? AND detector = ?")) {
            query.setString(1, site);
            query.setString(2, detector.name());
            try (ResultSet rows = query.executeQuery()) {
                if (rows.next()) {
                    number = rows.getLong(1);
                    state = Optional.of(rows.getString(2));
                }
            }
        }
        Detector.Step step = detector.step(state, fresh);
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO told VALUES (?, ?, ?, ?)")) {
            for (String text : step.told()) {
                insert.setString(1, site);
                insert.setString(2, detector.name());
                insert.setLong(3, ++number);
                insert.setString(4, text);
                insert.executeUpdate();
            }
        }
        try (PreparedStatement update =
                connection.prepareStatement("MERGE INTO machine KEY (site, detector) VALUES (?, ?, ?, ?)")) {
            update.setString(1, site);
            update.setString(2, detector.name());
            update.setLong(3, number);
            update.setString(4, step.state());
            update.executeUpdate();
        }
        return step.told();
    }

    /** The time of the last reading of a site. */
    Optional<Instant> last(String site) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement("SELECT MAX(at) FROM reading WHERE site = ?")) {
            query.setString(1, site);
            try (ResultSet rows = query.executeQuery()) {
                rows.next();
                return Optional.ofNullable(rows.getObject(1, Instant.class));
            }
        }
    }
}
