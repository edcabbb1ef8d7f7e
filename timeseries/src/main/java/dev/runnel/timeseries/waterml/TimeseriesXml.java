package dev.runnel.timeseries.waterml;

import dev.runnel.internal.Unreadable;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apiguardian.api.API;

/**
 * Reads and writes time series as XML; the package page says how. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TimeseriesXml {
    private final ZoneId zone;

    private TimeseriesXml(ZoneId zone) {
        this.zone = zone;
    }

    /**
     * Returns the reader and writer that takes times without an offset for UTC.
     *
     * @return reader and writer
     */
    public static TimeseriesXml standard() {
        return new TimeseriesXml(ZoneOffset.UTC);
    }

    /**
     * Returns the reader that takes times without an offset for those of a zone. What is written has offsets always.
     *
     * @param zone the zone; a local time that occurs twice or never is set aside
     * @return the new reader
     */
    public TimeseriesXml withZone(ZoneId zone) {
        Objects.requireNonNull(zone, "zone");
        return new TimeseriesXml(zone);
    }

    /** What to do with an opened document. */
    private interface Opened {
        XMLStreamReader open(XMLInputFactory factory) throws XMLStreamException;
    }

    /**
     * Reads a document from a file.
     *
     * @param file the file
     * @return its series and the account of points
     * @throws IllegalArgumentException if the file does not exist, is not well-formed XML, has a document type declaration,
     *     or holds no time series of measurements
     * @throws UncheckedIOException if the file cannot be read
     */
    public XmlRecord read(Path file) {
        if (Files.isDirectory(file)) {
            throw new IllegalArgumentException("file must be a file, was the folder " + file);
        }
        try (InputStream in = Files.newInputStream(file)) {
            return read(String.valueOf(file.getFileName()), factory -> factory.createXMLStreamReader(in));
        } catch (NoSuchFileException e) {
            throw new IllegalArgumentException("file must exist, was " + file, e);
        } catch (IOException e) {
            throw Unreadable.file(file, e);
        }
    }

    /**
     * Reads a document from a text.
     *
     * @param xml the document
     * @return its series and the account of points
     * @throws IllegalArgumentException as {@link #read}
     */
    public XmlRecord parse(String xml) {
        Objects.requireNonNull(xml, "xml");
        return read("text", factory -> factory.createXMLStreamReader(new StringReader(xml)));
    }

    private XmlRecord read(String name, Opened opened) {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        factory.setXMLResolver((publicId, systemId, base, namespace) -> {
            throw new XMLStreamException("nothing outside the document may be fetched");
        });
        XMLStreamReader reader = null;
        try {
            reader = opened.open(factory);
            return new XmlPass(name, reader, zone).read();
        } catch (XMLStreamException e) {
            int line = e.getLocation() == null ? 0 : e.getLocation().getLineNumber();
            if (e.getNestedException() instanceof IOException io) {
                throw Unreadable.file(name, io);
            }
            throw new IllegalArgumentException(
                    name + (line > 0 ? ", line " + line : "") + ": must be well-formed XML, was not", e);
        } finally {
            close(reader);
        }
    }

    private static void close(@org.jspecify.annotations.Nullable XMLStreamReader reader) {
        if (reader != null) {
            try {
                reader.close();
            } catch (XMLStreamException e) {
                throw new IllegalStateException("the reader of a document must close, did not", e);
            }
        }
    }

    /**
     * Writes series to a file.
     *
     * @param file the file, replaced as a whole if there is one; its folder must exist
     * @param dialect which standard
     * @param series the series, of different identifiers, at least one
     * @throws IllegalArgumentException if there is none, or two have one identifier
     * @throws UncheckedIOException if the file cannot be written
     */
    public void write(Path file, XmlDialect dialect, List<XmlSeries> series) {
        XmlText.require(series);
        Path target = file.toAbsolutePath();
        try {
            Path beside = target.resolveSibling(target.getFileName() + "." + UUID.randomUUID() + ".part");
            try {
                try (Writer out = Files.newBufferedWriter(beside, StandardCharsets.UTF_8)) {
                    new XmlText(out, dialect).write(series);
                }
                Files.move(beside, target, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write " + file, e);
        }
    }

    /**
     * Returns the document that {@link #write} would put into a file.
     *
     * @param dialect which standard
     * @param series the series, of different identifiers, at least one
     * @return the document
     * @throws IllegalArgumentException if there is none, or two have one identifier
     */
    public String toText(XmlDialect dialect, List<XmlSeries> series) {
        XmlText.require(series);
        StringWriter out = new StringWriter();
        try {
            new XmlText(out, dialect).write(series);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write to memory", e);
        }
        return out.toString();
    }

    @Override
    public String toString() {
        return "TimeseriesXml[times without an offset in " + zone + "]";
    }
}
