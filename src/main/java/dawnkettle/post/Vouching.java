package dawnkettle.post;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What the receiving server says about a mail's sender (RFC 8601): only its own topmost word counts. Anybody can write
 * such a header into a mail; the server's own stands above those that came with it.
 */
final class Vouching {
    private final String server;

    /** @param server by which name the receiving server signs */
    Vouching(String server) {
        this.server = server.toLowerCase(Locale.ROOT);
    }

    /**
     * @param results all Authentication-Results of the mail, the topmost first
     * @param from the one address of its From header
     * @return why the server does not vouch for the address; empty where it does
     */
    Optional<String> doubt(List<String> results, String from) {
        for (String header : results) {
            List<String> parts = parts(header);
            String[] signed = words(parts.get(0));
            if (signed.length > 0 && signed[0].equals(server)) return doubtOf(parts.subList(1, parts.size()), from);
        }
        return Optional.of("the receiving server said nothing about its sender");
    }

    private static Optional<String> doubtOf(List<String> verdicts, String from) {
        String domain = from.substring(from.lastIndexOf('@') + 1).toLowerCase(Locale.ROOT);
        boolean passed = false;
        for (String verdict : verdicts) {
            String[] words = words(verdict);
            if (words.length == 0 || !words[0].startsWith("dmarc=")) continue;
            if (!words[0].equals("dmarc=pass"))
                return Optional.of("the receiving server does not vouch for its sender");
            if (!List.of(words).contains("header.from=" + domain))
                return Optional.of("the receiving server vouches for somebody else");
            passed = true;
        }
        return passed ? Optional.empty() : Optional.of("the receiving server does not vouch for its sender");
    }

    private static String[] words(String part) {
        String plain = part.strip().toLowerCase(Locale.ROOT).replaceAll("\\s*=\\s*", "=");
        return plain.isEmpty() ? new String[0] : plain.split("\\s+");
    }

    /** The header at its semicolons, without comments; a quoted word is one that nothing here is compared with. */
    private static List<String> parts(String header) {
        List<String> parts = new ArrayList<>();
        StringBuilder part = new StringBuilder();
        int depth = 0;
        boolean quoted = false;
        for (int i = 0; i < header.length(); i++) {
            char c = header.charAt(i);
            if (c == '\\' && (quoted || depth > 0)) i++;
            else if (c == '"' && depth == 0) {
                quoted = !quoted;
                part.append('"');
            } else if (quoted) part.append(Character.isWhitespace(c) ? '_' : c);
            else if (c == '(') depth++;
            else if (c == ')' && depth > 0) depth--;
            else if (depth == 0 && c == ';') {
                parts.add(part.toString());
                part.setLength(0);
            } else if (depth == 0) part.append(c);
        }
        // What is left open could hide a verdict: then the last part says nothing.
        parts.add(quoted || depth > 0 ? "" : part.toString());
        return parts;
    }
}
