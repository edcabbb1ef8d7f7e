package dev.runnel.examples.pages;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Small pieces of a page. */
final class Html {
    /** Files of the class path, which every page of a survey needs again. */
    private static final Map<String, String> PARTS = new ConcurrentHashMap<>();

    private Html() {}

    static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                // Texts of the review bind a number to its unit.
                .replace("\u00A0", "&nbsp;");
    }

    /** A text as a string of JSON that may stand in a page: nothing in it can end the script around it. */
    static String json(String text) {
        StringBuilder out = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c == '"' || c == '\\' || c == '<' || c == '>' || c == '&' || c > '~') {
                out.append("\\u").append(HexFormat.of().toHexDigits(c));
            } else {
                out.append(c);
            }
        }
        return out.append('"').toString();
    }

    /** A file from the class path. */
    static String part(String path) {
        return PARTS.computeIfAbsent(path, Html::read);
    }

    private static String read(String path) {
        try (InputStream in = Html.class.getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is missing from the program");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
