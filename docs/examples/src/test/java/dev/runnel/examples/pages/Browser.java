package dev.runnel.examples.pages;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A Chromium of this machine without a window, spoken to over its own debugging protocol; nothing is downloaded. */
final class Browser implements AutoCloseable, WebSocket.Listener {
    private static final int SECONDS = 60;

    private final Process process;
    private final Path profile;
    private final AtomicInteger calls = new AtomicInteger();
    private final ConcurrentHashMap<Integer, CompletableFuture<String>> answers = new ConcurrentHashMap<>();
    private final List<String> complaints = new ArrayList<>();
    private final List<String> requests = new ArrayList<>();
    private final StringBuilder part = new StringBuilder();
    private final CompletableFuture<WebSocket> socket = new CompletableFuture<>();

    private Browser(Process process, Path profile) {
        this.process = process;
        this.profile = profile;
    }

    /** Returns the program, by {@code -Dchromium=PATH} or from the path; empty if there is none. */
    static Optional<Path> program() {
        String named = System.getProperty("chromium", "");
        if (!named.isEmpty()) {
            return Optional.of(Path.of(named));
        }
        return Stream.of(System.getenv().getOrDefault("PATH", "").split(java.io.File.pathSeparator))
                .flatMap(folder -> Stream.of("chromium", "chromium-browser").map(name -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }

    static Browser start(Path program, Path profile) throws Exception {
        Process process = new ProcessBuilder(
                        program.toString(),
                        "--headless=new",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--remote-debugging-port=0",
                        "--user-data-dir=" + profile,
                        "about:blank")
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        Browser browser = new Browser(process, profile);
        List<String> port = browser.port();
        URI address = URI.create("ws://127.0.0.1:" + port.get(0) + port.get(1));
        WebSocket socket = HttpClient.newHttpClient()
                .newWebSocketBuilder()
                .buildAsync(address, browser)
                .get(SECONDS, TimeUnit.SECONDS);
        browser.socket.complete(socket);
        return browser;
    }

    /** The browser writes where it listens into its profile; how soon, depends on the machine. */
    private List<String> port() throws IOException, InterruptedException {
        Path file = profile.resolve("DevToolsActivePort");
        long end = System.nanoTime() + Duration.ofSeconds(SECONDS).toNanos();
        while (System.nanoTime() < end) {
            if (Files.exists(file) && Files.readAllLines(file).size() >= 2) {
                return Files.readAllLines(file);
            }
            TimeUnit.MILLISECONDS.sleep(50);
        }
        throw new IOException("the browser did not start within " + SECONDS + " s");
    }

    /** Opens a page in a window of some width and returns the session of it. */
    String open(Path page, int width) throws Exception {
        String target = value(call("", "Target.createTarget", "{\"url\":\"about:blank\"}"), "targetId");
        String session = value(
                call("", "Target.attachToTarget", "{\"targetId\":\"" + target + "\",\"flatten\":true}"), "sessionId");
        call(session, "Runtime.enable", "{}");
        call(session, "Log.enable", "{}");
        call(session, "Network.enable", "{}");
        call(session, "Page.enable", "{}");
        call(
                session,
                "Emulation.setDeviceMetricsOverride",
                "{\"width\":" + width + ",\"height\":900,\"deviceScaleFactor\":1,\"mobile\":false}");
        call(session, "Page.navigate", "{\"url\":\"" + page.toUri() + "\"}");
        return session;
    }

    /** Returns the value of an expression as text. */
    String ask(String session, String expression) throws Exception {
        String answer = call(
                session,
                "Runtime.evaluate",
                "{\"awaitPromise\":true,\"returnByValue\":true,\"expression\":"
                        + Html.json("String(" + expression + ")") + "}");
        return value(answer, "value");
    }

    /** Waits until an expression is true. */
    void await(String session, String expression) throws Exception {
        long end = System.nanoTime() + Duration.ofSeconds(SECONDS).toNanos();
        while (!ask(session, expression).equals("true")) {
            if (System.nanoTime() > end) {
                throw new AssertionError("not true within " + SECONDS + " s: " + expression);
            }
            TimeUnit.MILLISECONDS.sleep(50);
        }
    }

    void press(String session, String key) throws Exception {
        for (String type : List.of("keyDown", "keyUp")) {
            call(
                    session,
                    "Input.dispatchKeyEvent",
                    "{\"type\":\"" + type + "\",\"key\":\"" + key + "\",\"code\":\"" + key + "\"}");
        }
    }

    /** How many sheets of paper the page takes. */
    int sheets(String session) throws Exception {
        String pdf = value(
                call(session, "Page.printToPDF", "{\"preferCSSPageSize\":true,\"printBackground\":true}"), "data");
        String text =
                new String(java.util.Base64.getDecoder().decode(pdf), java.nio.charset.StandardCharsets.ISO_8859_1);
        Matcher count = Pattern.compile("/Type\\s*/Page[^s]").matcher(text);
        int sheets = 0;
        while (count.find()) {
            sheets++;
        }
        return sheets;
    }

    String call(String session, String method, String parameters) throws Exception {
        int id = calls.incrementAndGet();
        CompletableFuture<String> answer = new CompletableFuture<>();
        answers.put(id, answer);
        String text = "{\"id\":" + id + (session.isEmpty() ? "" : ",\"sessionId\":\"" + session + "\"")
                + ",\"method\":\"" + method + "\",\"params\":" + parameters + "}";
        socket.get().sendText(text, true).get(SECONDS, TimeUnit.SECONDS);
        return answer.get(SECONDS, TimeUnit.SECONDS);
    }

    /** What the console or an uncaught exception said. */
    synchronized List<String> complaints() {
        return List.copyOf(complaints);
    }

    /** Addresses that were asked for. */
    synchronized List<String> requests() {
        return List.copyOf(requests);
    }

    /** The first text of that name. */
    private static String value(String json, String key) {
        String start = "\"" + key + "\":\"";
        int at = json.indexOf(start);
        if (at < 0) {
            throw new AssertionError("no " + key + " in " + json);
        }
        StringBuilder text = new StringBuilder();
        for (int i = at + start.length(); json.charAt(i) != '"'; i++) {
            char c = json.charAt(i);
            if (c == '\\') {
                i++;
                c = json.charAt(i) == 'n' ? '\n' : json.charAt(i);
            }
            text.append(c);
        }
        return text.toString();
    }

    @Override
    public CompletionStage<?> onText(WebSocket webSocket, CharSequence data, boolean last) {
        part.append(data);
        if (last) {
            message(part.toString());
            part.setLength(0);
        }
        webSocket.request(1);
        return CompletableFuture.completedFuture(null);
    }

    private void message(String text) {
        Matcher id = Pattern.compile("^\\{\"id\":(\\d+)").matcher(text);
        if (id.find()) {
            CompletableFuture<String> answer = answers.remove(Integer.valueOf(id.group(1)));
            if (answer != null) {
                answer.complete(text);
            }
            return;
        }
        synchronized (this) {
            if (text.contains("\"Runtime.exceptionThrown\"")
                    || text.contains("\"Runtime.consoleAPICalled\"")
                    || text.contains("\"Log.entryAdded\"")) {
                complaints.add(text);
            }
            if (text.contains("\"Network.requestWillBeSent\"")) {
                Matcher url = Pattern.compile("\"url\":\"([^\"]*)\"").matcher(text);
                if (url.find()) {
                    requests.add(url.group(1));
                }
            }
        }
    }

    @Override
    public void close() throws IOException {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly().onExit().join();
        try (Stream<Path> inside = Files.walk(profile)) {
            inside.sorted(Comparator.reverseOrder())
                    .forEach(path -> path.toFile().delete());
        }
    }
}
