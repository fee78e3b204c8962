import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.MessageDigest;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Checks a custody export against itself, its signatures and, if given, a proof kept elsewhere. It uses nothing but
 * the Java platform: no database, no network and none of the service's own code. The rules, numbered alike, are in
 * docs/custody-verification.md.
 *
 * <p>Exit: 0 all as recorded, 1 a difference, 2 it could not be run.
 */
public final class VerifyCustody {

    private static final String USAGE = "usage: verify-custody [--key PUBLIC.pem]... FILE [PROOF]";
    private static final String NOTHING_BEFORE = "0".repeat(64);
    private static final int PRINTED = 50;
    private static final int LONGEST_SHOWN = 500;

    private record Head(long position, String hash) {}

    private record Pending(String name, String hash) {}

    private final PrintStream out;
    private final Set<String> keys = new LinkedHashSet<>();
    private final Map<String, Head> heads = new HashMap<>();
    private final List<Pending> pending = new ArrayList<>();
    private long differences;
    private long events;
    private long lastNumber;
    private String lastCheckpoint;
    private String lastMadeAt;

    /** What the proof names, to be met in the file. */
    private Map<?, ?> proof;

    private Map<?, ?> proofEvent;
    private Map<?, ?> proofCheckpoint;
    private boolean proofEventMet;
    private boolean proofCheckpointMet;

    private VerifyCustody(PrintStream out) {
        this.out = out;
    }

    public static void main(String[] arguments) {
        System.exit(run(arguments, System.out));
    }

    /** What main does, with the exit status as its result. */
    public static int run(String[] arguments, PrintStream out) {
        VerifyCustody check = new VerifyCustody(out);
        List<Path> files = new ArrayList<>();
        try {
            for (int i = 0; i < arguments.length; i++) {
                if (arguments[i].equals("--key") && i + 1 < arguments.length) {
                    check.keys.add(publicKey(Path.of(arguments[++i])));
                } else if (arguments[i].startsWith("--")) {
                    throw new IllegalArgumentException(USAGE);
                } else {
                    files.add(Path.of(arguments[i]));
                }
            }
            if (files.isEmpty() || files.size() > 2) {
                throw new IllegalArgumentException(USAGE);
            }
            return check.check(files.get(0), files.size() == 2 ? files.get(1) : null);
        } catch (IOException e) {
            out.println("cannot read " + e.getMessage());
        } catch (IllegalArgumentException e) {
            out.println(e.getMessage());
        } catch (OutOfMemoryError e) {
            out.println("a line of the file is too long for the memory that Java may use here; run it with more,"
                    + " such as JAVA_TOOL_OPTIONS=-Xmx8g");
        }
        return 2;
    }

    private int check(Path file, Path proofFile) throws IOException {
        boolean pinned = !keys.isEmpty();
        if (proofFile != null) {
            readProof(proofFile);
        }
        try (InputStream in = Files.newInputStream(file)) {
            Lines lines = new Lines(in);
            long number = 0;
            for (byte[] line = lines.next(); line != null; line = lines.next()) {
                line(++number, line);
            }
        }
        end();
        if (proofFile != null) {
            endOfProof(proofFile);
        }
        if (differences > 0) {
            if (differences > PRINTED) {
                out.println("... and " + (differences - PRINTED) + " more");
            }
            out.println("NOT AS RECORDED: " + differences + (differences == 1 ? " difference" : " differences"));
            return 1;
        }
        out.println("As recorded: " + events + " events in " + heads.size() + " chains under " + lastNumber
                + " checkpoints.");
        out.println("Last checkpoint: number " + lastNumber + ", made at " + lastMadeAt + ", SHA-256 "
                + sha256(lastCheckpoint) + ". A file that ends before a checkpoint you know of is cut short.");
        if (proofFile != null) {
            out.println("The proof holds, and its event and checkpoint are in the file.");
        }
        for (String key : keys) {
            out.println((pinned ? "Signed by the key given, fingerprint " : "Signed by the key with fingerprint ")
                    + hex(digest(Base64.getDecoder().decode(key)))
                    + (pinned ? "." : "; compare it with the published key, or give that with --key."));
        }
        out.println("This shows that nothing was changed since it was recorded."
                + " It does not show that the first entry was true.");
        return 0;
    }

    private static String utf8(byte[] bytes) {
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException e) {
            throw new IllegalArgumentException("bytes that are no UTF-8");
        }
    }

    private void line(long number, byte[] line) {
        String where = "line " + number;
        try {
            Map<?, ?> content = Json.object(utf8(line));
            if (content.containsKey("event")) {
                onlyNames(where, content, Set.of("event", "hash"));
                event(where, content);
            } else {
                onlyNames(where, content, Set.of("checkpoint", "leaves", "signature"));
                checkpoint(where, content);
            }
        } catch (IllegalArgumentException e) {
            differ(where, "readable line", "an event or a checkpoint", e.getMessage());
        }
    }

    /** Rules 1 to 4. */
    private void event(String line, Map<?, ?> content) {
        events++;
        String text = string(content, "event");
        String hash = string(content, "hash");
        Map<?, ?> event = Json.object(text);
        String chain = string(event, "chain");
        long position = number(event, "sequence");
        Head head = heads.getOrDefault(chain, new Head(0, NOTHING_BEFORE));
        String where = line + ", " + named(event);
        compare(where, "hash", hash, sha256(text));
        compare(where, "position", head.position + 1, position);
        compare(where, "predecessor", head.hash, string(event, "predecessor"));
        heads.put(chain, new Head(position, hash));
        pending.add(new Pending(where, hash));
        if (proof != null && string(proofEvent, "id").equals(string(event, "id"))) {
            proofEventMet = true;
            compare(where, "text in the proof", string(proof, "event"), text);
        }
    }

    /** Rules 5 to 8. */
    private void checkpoint(String line, Map<?, ?> content) {
        String text = string(content, "checkpoint");
        Map<?, ?> checkpoint = Json.object(text);
        List<String> leaves = strings(content, "leaves");
        long number = number(checkpoint, "number");
        String where = line + ", checkpoint " + number;
        compare(where, "number", lastNumber + 1, number);
        compare(where, "previous", lastCheckpoint == null ? NOTHING_BEFORE : sha256(lastCheckpoint),
                string(checkpoint, "previous"));
        compare(where, "tree size", number(checkpoint, "treeSize"), leaves.size());
        compare(where, "root", string(checkpoint, "root"), hex(root(leaves.stream().map(VerifyCustody::leaf).toList())));
        signature(where, text, string(checkpoint, "key"), string(content, "signature"));
        leaves(where, leaves);
        pending.clear();
        lastNumber = number;
        lastCheckpoint = text;
        lastMadeAt = string(checkpoint, "madeAt");
        if (proof != null && number(proofCheckpoint, "number") == number) {
            proofCheckpointMet = true;
            compare(where, "text in the proof", string(proof, "checkpoint"), text);
        }
    }

    private void signature(String where, String text, String key, String signature) {
        if (keys.isEmpty()) {
            keys.add(key);
        }
        if (!keys.contains(key)) {
            differ(where, "key", String.join(" or ", keys), key);
        } else if (!verifies(key, text, signature)) {
            differ(where, "signature", "one by key " + key, signature);
        }
    }

    /** Rule 8: the checkpoint's leaves are the events since the one before it, in this order. */
    private void leaves(String where, List<String> leaves) {
        Set<String> found = new HashSet<>();
        pending.forEach(event -> found.add(event.hash));
        Set<String> sealed = new HashSet<>(leaves);
        boolean same = true;
        for (int i = 0; i < leaves.size(); i++) {
            if (!found.contains(leaves.get(i))) {
                same = false;
                differ(where + ", leaf " + i, "event", "one with hash " + leaves.get(i), "none");
            }
        }
        for (Pending event : pending) {
            if (!sealed.contains(event.hash)) {
                same = false;
                differ(event.name, "leaf", "one of the following checkpoint's", event.hash);
            }
        }
        for (int i = 0; same && i < Math.max(leaves.size(), pending.size()); i++) {
            String sealedHash = i < leaves.size() ? leaves.get(i) : "none";
            Pending event = i < pending.size() ? pending.get(i) : new Pending(where + ", leaf " + i, "none");
            if (!sealedHash.equals(event.hash)) {
                same = false;
                differ(event.name, "leaf " + i + " of the following checkpoint", sealedHash, event.hash);
            }
        }
    }

    /** Rule 9. */
    private void end() {
        if (lastCheckpoint == null) {
            differ("end of file", "checkpoint", "at least one", "none");
        }
        if (!pending.isEmpty()) {
            differ(pending.get(0).name, "following checkpoint", "one that seals this event",
                    "end of file, " + pending.size() + " events without");
        }
    }

    /** Rule 10. */
    private void readProof(Path file) throws IOException {
        String where = "proof";
        try {
            proof = Json.object(utf8(Files.readAllBytes(file)));
            onlyNames(where, proof, Set.of("event", "index", "path", "checkpoint", "signature"));
            String text = string(proof, "checkpoint");
            proofCheckpoint = Json.object(text);
            number(proofCheckpoint, "number");
            proofEvent = Json.object(string(proof, "event"));
            named(proofEvent);
            signature(where, text, string(proofCheckpoint, "key"), string(proof, "signature"));
            List<byte[]> path = strings(proof, "path").stream().map(HexFormat.of()::parseHex).toList();
            byte[] leaf = leaf(sha256(string(proof, "event")));
            String root = climb(leaf, number(proof, "index"), number(proofCheckpoint, "treeSize"), path);
            compare(where, "root", string(proofCheckpoint, "root"), root);
        } catch (IllegalArgumentException e) {
            proof = null;
            differ(where, "readable proof", "a proof", e.getMessage());
        }
    }

    private void endOfProof(Path file) {
        if (proof == null) {
            return;
        }
        if (!proofCheckpointMet) {
            differ("proof", "its checkpoint", "number " + number(proofCheckpoint, "number") + " in the file",
                    "the last is number " + lastNumber);
        }
        if (!proofEventMet) {
            differ("proof", "its event", named(proofEvent) + " in the file", "none");
        }
    }

    private static String named(Map<?, ?> event) {
        return "event " + string(event, "id") + " at position " + number(event, "sequence") + " of chain "
                + string(event, "chain");
    }

    // Hashes, tree and signature.

    private static byte[] root(List<byte[]> leaves) {
        if (leaves.isEmpty()) {
            return digest();
        }
        if (leaves.size() == 1) {
            return leaves.get(0);
        }
        int split = Integer.highestOneBit(leaves.size() - 1);
        return node(root(leaves.subList(0, split)), root(leaves.subList(split, leaves.size())));
    }

    private static String climb(byte[] leaf, long index, long size, List<byte[]> path) {
        long at = index;
        long last = size - 1;
        byte[] hash = leaf;
        if (index < 0 || index > last) {
            return "index " + index + " outside a tree of " + size;
        }
        for (byte[] sibling : path) {
            if (last == 0) {
                return "path too long";
            }
            if (at % 2 == 1 || at == last) {
                hash = node(sibling, hash);
                while (at % 2 == 0 && at != 0) {
                    at /= 2;
                    last /= 2;
                }
            } else {
                hash = node(hash, sibling);
            }
            at /= 2;
            last /= 2;
        }
        return last == 0 ? hex(hash) : "path too short";
    }

    private static byte[] leaf(String eventHash) {
        return digest(new byte[] {0}, HexFormat.of().parseHex(eventHash));
    }

    private static byte[] node(byte[] left, byte[] right) {
        return digest(new byte[] {1}, left, right);
    }

    private static String sha256(String text) {
        return hex(digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static byte[] digest(byte[]... parts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (byte[] part : parts) {
                digest.update(part);
            }
            return digest.digest();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String hex(byte[] bytes) {
        return HexFormat.of().formatHex(bytes);
    }

    private static boolean verifies(String key, String text, String signature) {
        try {
            Signature check = Signature.getInstance("Ed25519");
            check.initVerify(KeyFactory.getInstance("Ed25519")
                    .generatePublic(new X509EncodedKeySpec(Base64.getDecoder().decode(key))));
            check.update(text.getBytes(StandardCharsets.UTF_8));
            return check.verify(Base64.getDecoder().decode(signature));
        } catch (GeneralSecurityException | IllegalArgumentException e) {
            return false;
        }
    }

    private static String publicKey(Path pem) throws IOException {
        Matcher block = Pattern.compile("-----BEGIN PUBLIC KEY-----(.*?)-----END PUBLIC KEY-----", Pattern.DOTALL)
                .matcher(Files.readString(pem));
        if (!block.find()) {
            throw new IllegalArgumentException(pem + " holds no PUBLIC KEY block");
        }
        return block.group(1).replaceAll("\\s", "");
    }

    // Differences and typed access.

    private void compare(String where, String what, Object expected, Object found) {
        if (!String.valueOf(expected).equals(String.valueOf(found))) {
            differ(where, what, String.valueOf(expected), String.valueOf(found));
        }
    }

    private void differ(String where, String what, String expected, String found) {
        if (++differences <= PRINTED) {
            out.println("DIFFERENCE " + shown(where) + ": " + what + ": expected " + shown(expected) + ", found "
                    + shown(found));
        }
    }

    /** What a file says, fit for a terminal: no control characters, and only the beginning of what is long. */
    private static String shown(String text) {
        StringBuilder shown = new StringBuilder();
        for (int i = 0; i < Math.min(text.length(), LONGEST_SHOWN); i++) {
            char unit = text.charAt(i);
            int kind = Character.getType(unit);
            boolean bare = kind == Character.CONTROL || kind == Character.FORMAT || kind == Character.LINE_SEPARATOR
                    || kind == Character.PARAGRAPH_SEPARATOR;
            shown.append(bare ? String.format("\\u%04x", (int) unit) : String.valueOf(unit));
        }
        return text.length() <= LONGEST_SHOWN ? shown.toString() : shown + "... (" + text.length() + " characters)";
    }

    private void onlyNames(String where, Map<?, ?> content, Set<String> names) {
        for (Object name : content.keySet()) {
            if (!names.contains(name)) {
                differ(where, "names", String.join(", ", names.stream().sorted().toList()),
                        "also " + name + ", which nothing covers");
            }
        }
    }

    private static String string(Map<?, ?> content, String name) {
        if (content.get(name) instanceof String text) {
            return text;
        }
        throw new IllegalArgumentException("no text under the name " + name);
    }

    private static long number(Map<?, ?> content, String name) {
        if (content.get(name) instanceof Long number) {
            return number;
        }
        throw new IllegalArgumentException("no whole number under the name " + name);
    }

    private static List<String> strings(Map<?, ?> content, String name) {
        if (content.get(name) instanceof List<?> list && list.stream().allMatch(String.class::isInstance)) {
            List<String> texts = list.stream().map(String.class::cast).toList();
            if (texts.stream().allMatch(text -> text.matches("[0-9a-f]{64}"))) {
                return texts;
            }
        }
        throw new IllegalArgumentException("no list of hashes under the name " + name);
    }

    /** Reads a file as bytes, line by line. */
    private static final class Lines {

        private final InputStream in;
        private final byte[] buffer = new byte[1 << 16];
        private int at;
        private int end;

        private Lines(InputStream in) {
            this.in = in;
        }

        /** The next line without its end, LF or CR LF; null after the last. */
        byte[] next() throws IOException {
            ByteArrayOutputStream line = new ByteArrayOutputStream();
            boolean any = false;
            while (at < end || fill()) {
                any = true;
                int from = at;
                while (at < end && buffer[at] != '\n') {
                    at++;
                }
                line.write(buffer, from, at - from);
                if (at < end) {
                    at++;
                    byte[] bytes = line.toByteArray();
                    boolean cr = bytes.length > 0 && bytes[bytes.length - 1] == '\r';
                    return cr ? Arrays.copyOf(bytes, bytes.length - 1) : bytes;
                }
            }
            return any ? line.toByteArray() : null;
        }

        private boolean fill() throws IOException {
            at = 0;
            end = in.read(buffer);
            return end > 0;
        }
    }

    /** A strict reader of JSON (RFC 8259): a repeated name or anything after the end is refused. */
    private static final class Json {

        /** Arrays and objects within one another; an export has two. */
        private static final int DEEPEST = 100;

        private final String text;
        private int at;
        private int depth;

        private Json(String text) {
            this.text = text;
        }

        static Map<?, ?> object(String text) {
            Json json = new Json(text);
            if (text.startsWith("\uFEFF")) {
                throw json.bad("a byte order mark, which an editor puts there");
            }
            Object value = json.value();
            json.space();
            if (json.at < text.length()) {
                throw json.bad("something after the end");
            }
            if (value instanceof Map<?, ?> object) {
                return object;
            }
            throw new IllegalArgumentException("no JSON object");
        }

        private Object value() {
            space();
            char next = peek();
            if (next == '{' || next == '[') {
                if (++depth > DEEPEST) {
                    throw bad("more than " + DEEPEST + " arrays and objects within one another");
                }
                Object nested = next == '{' ? members() : elements();
                depth--;
                return nested;
            }
            if (next == '"') {
                return quoted();
            }
            int from = at;
            while (at < text.length() && "+-.0123456789Eaeflnrstu".indexOf(text.charAt(at)) >= 0) {
                at++;
            }
            String word = text.substring(from, at);
            if (word.matches("-?(0|[1-9][0-9]{0,17})")) {
                return Long.valueOf(word);
            }
            return switch (word) {
                case "true" -> Boolean.TRUE;
                case "false" -> Boolean.FALSE;
                case "null" -> null;
                default -> throw bad("no whole number, true, false or null");
            };
        }

        private Map<String, Object> members() {
            Map<String, Object> members = new LinkedHashMap<>();
            take('{');
            if (!taken('}')) {
                do {
                    space();
                    String name = quoted();
                    take(':');
                    if (members.containsKey(name)) {
                        throw bad("the name " + name + " repeated");
                    }
                    members.put(name, value());
                } while (taken(','));
                take('}');
            }
            return members;
        }

        private List<Object> elements() {
            List<Object> elements = new ArrayList<>();
            take('[');
            if (!taken(']')) {
                do {
                    elements.add(value());
                } while (taken(','));
                take(']');
            }
            return elements;
        }

        private String quoted() {
            if (peek() != '"') {
                throw bad("no text in quotes");
            }
            at++;
            StringBuilder quoted = new StringBuilder();
            while (peek() != '"') {
                char unit = text.charAt(at++);
                if (unit < ' ') {
                    throw bad("a bare control character");
                }
                quoted.append(unit == '\\' ? escaped() : unit);
            }
            at++;
            // Half a character has no bytes: put to UTF-8 it would hash as a question mark.
            if (!StandardCharsets.UTF_8.newEncoder().canEncode(quoted)) {
                throw bad("a lone surrogate");
            }
            return quoted.toString();
        }

        private char escaped() {
            char escape = peek();
            at++;
            if (escape == 'u' && at + 4 <= text.length() && text.substring(at, at + 4).matches("[0-9A-Fa-f]{4}")) {
                at += 4;
                return (char) Integer.parseInt(text.substring(at - 4, at), 16);
            }
            int which = "\"\\/bfnrt".indexOf(escape);
            if (which < 0) {
                throw bad("an unknown escape");
            }
            return "\"\\/\b\f\n\r\t".charAt(which);
        }

        private void space() {
            while (at < text.length() && " \t\r\n".indexOf(text.charAt(at)) >= 0) {
                at++;
            }
        }

        private boolean taken(char wanted) {
            space();
            boolean there = at < text.length() && text.charAt(at) == wanted;
            at += there ? 1 : 0;
            return there;
        }

        private void take(char wanted) {
            if (!taken(wanted)) {
                throw bad("no '" + wanted + "'");
            }
        }

        private char peek() {
            if (at >= text.length()) {
                throw bad("the end");
            }
            return text.charAt(at);
        }

        private IllegalArgumentException bad(String what) {
            return new IllegalArgumentException("no JSON: " + what + " at character " + (at + 1));
        }
    }
}
