package dawnkettle.command;

import dawnkettle.conf.Configuration;
import dawnkettle.shop.Customer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Takes customers, people, addresses and accounts out of a text that leaves the house; codes and quantities stay. */
final class Redaction {
    static final String OUT = "(taken out)";

    private static final Pattern MAIL = Pattern.compile("[^\\s;,<>\"'=]+@[^\\s;,<>\"']+");
    private static final Pattern ADDRESS =
            Pattern.compile("\\b[a-z][a-z0-9+.-]*://[^\\s\"',]+", Pattern.CASE_INSENSITIVE);
    private static final Pattern KEY = Pattern.compile("^(\\s*)([A-Za-z_]+)(\\s*=\\s*)(.*)$");

    /** Keys of shop.toml that say who and where, or lead to an account. */
    private static final Set<String> KEYS = Set.of(
            "name",
            "address",
            "host",
            "user",
            "from",
            "url",
            "secret_file",
            "copy_key_file",
            "second_copy",
            "queue",
            "authserv_id",
            "summary_to",
            "alert_to",
            "farmer_to",
            "owner",
            "crew",
            "tags",
            "state");

    private final List<Taken> taken = new ArrayList<>();

    private record Taken(Pattern words, String instead, int length) {}

    Redaction(Configuration conf) {
        for (Customer customer : conf.shop().customers()) {
            String instead = "(customer " + customer.code() + ")";
            take(customer.name(), instead);
            customer.aliases().forEach(alias -> take(alias, instead));
            take(customer.address(), instead);
        }
        take(conf.shop().house().name(), OUT);
        conf.shop().house().address().forEach(line -> take(line, OUT));
        // The longest first, so that no part of a name is left beside what replaced another part.
        taken.sort(Comparator.comparingInt(Taken::length).reversed());
    }

    private void take(String words, String instead) {
        if (words.strip().length() < 2) return;
        int flags = Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE;
        String edges = "(?<![\\p{L}\\p{N}])" + Pattern.quote(words.strip()) + "(?![\\p{L}\\p{N}])";
        taken.add(new Taken(Pattern.compile(edges, flags), instead, words.length()));
    }

    String text(String text) {
        String left = MAIL.matcher(text).replaceAll(OUT);
        left = ADDRESS.matcher(left).replaceAll(OUT);
        for (Taken one : taken) left = one.words().matcher(left).replaceAll(Matcher.quoteReplacement(one.instead()));
        return left;
    }

    /** A TOML file without its comments and without what its keys say of people and accounts. */
    String toml(String text) {
        List<String> lines = new ArrayList<>();
        boolean inList = false;
        for (String line : text.split("\n", -1)) {
            if (inList) {
                inList = !line.contains("]");
                continue;
            }
            if (line.strip().startsWith("#") || line.isBlank()) continue;
            Matcher key = KEY.matcher(line);
            if (key.matches() && KEYS.contains(key.group(2))) {
                lines.add(key.group(1) + key.group(2) + key.group(3) + "\"" + OUT + "\"");
                inList = key.group(4).strip().startsWith("[") && !key.group(4).contains("]");
            } else lines.add(withoutComment(line));
        }
        return text(String.join("\n", lines) + "\n");
    }

    private static String withoutComment(String line) {
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            if (line.charAt(i) == '"') quoted = !quoted;
            if (line.charAt(i) == '#' && !quoted) return line.substring(0, i).stripTrailing();
        }
        return line;
    }
}
