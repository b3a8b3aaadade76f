package dawnkettle.conf;

import dawnkettle.night.OrderMailSettings;
import dawnkettle.post.MailboxSettings;
import dawnkettle.post.PostSettings.Security;
import dawnkettle.shop.Customer;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Reads of {@code shop.toml} where orders come in by mail, and who may write what. */
final class ReadOrderMailbox {
    private static final List<String> HERE = List.of("localhost", "127.0.0.1", "::1");

    /** A token that is shorter could be guessed (common practice, no source). */
    private static final String TOKEN = "[a-z0-9]{10,40}";

    private final Path dir;
    private final List<Customer> customers;

    ReadOrderMailbox(Path dir, List<Customer> customers) {
        this.dir = dir;
        this.customers = customers;
    }

    Optional<OrderMailChoice> read(Section file) {
        return file.findSection("orders_mail").map(this::choice);
    }

    private OrderMailChoice choice(Section from) {
        MailboxSettings box = box(from);
        Optional<String> address = from.find("address")
                .map(ReadOrderMailbox::address)
                .or(() -> Optional.of(box.user()).filter(ReadEdges::isMailAddress));
        OrderMailChoice read = new OrderMailChoice(box, rules(from), WordLists.from(dir), address);
        from.noMore();
        return read;
    }

    private MailboxSettings box(Section from) {
        String host = from.need("host", "\"imap.millrace.example\"").words();
        Security security = from.find("security")
                .map(word -> {
                    Security named = word.oneOf(Security.class);
                    return named == Security.NONE && !HERE.contains(host)
                            ? word.bad(named, "would send the password in the clear", "write tls or starttls")
                            : named;
                })
                .orElse(Security.TLS);
        Written secret = from.need("secret_file", "\"/run/credentials/dawnkettle.service/imap\"");
        return new MailboxSettings(
                host,
                from.find("port").map(port -> port.whole(1, 65_535)).orElse(security == Security.TLS ? 993 : 143),
                security,
                from.need("user", "\"orders@millrace.example\"").words(),
                secret.kind() == Written.Kind.MISSING ? Optional.empty() : Optional.of(SecretFile.read(secret, dir)),
                from.need("authserv_id", "\"mx.millrace.example\"").words(),
                Duration.ofSeconds(
                        from.find("patience_seconds").map(s -> s.whole(1, 300)).orElse(15)));
    }

    private OrderMailSettings rules(Section from) {
        List<String> owners = from.needList("owner", "[\"owner@millrace.example\"]").stream()
                .map(ReadOrderMailbox::address)
                .toList();
        Map<String, Set<String>> crew = new TreeMap<>();
        from.findList("crew").forEach(written -> crew(written, crew));
        Map<String, String> tags = new TreeMap<>();
        from.findList("tags").forEach(written -> tag(written, tags));
        OrderMailSettings.Limits usual = OrderMailSettings.Limits.USUAL;
        return new OrderMailSettings(
                owners,
                crew,
                tags,
                Duration.ofMinutes(
                        from.find("poll_minutes").map(m -> m.whole(1, 60)).orElse(2)),
                new OrderMailSettings.Limits(
                        from.find("replies_an_hour").map(n -> n.whole(0, 60)).orElse(usual.anHour()),
                        from.find("replies_a_night").map(n -> n.whole(0, 500)).orElse(usual.aNight()),
                        from.find("book_words").map(Written::truth).orElse(usual.booksWords())));
    }

    private static String address(Written written) {
        String address = written.text().strip().toLowerCase(Locale.ROOT);
        return ReadEdges.isMailAddress(address)
                ? address
                : written.bad("-", "is no mail address", "write it as owner@millrace.example");
    }

    private static void crew(Written written, Map<String, Set<String>> crew) {
        List<String> words = new ArrayList<>(
                List.of(written.text().strip().toLowerCase(Locale.ROOT).split("\\s+")));
        String address = words.remove(0);
        boolean fit =
                ReadEdges.isMailAddress(address) && !words.isEmpty() && OrderMailSettings.CREW_WORDS.containsAll(words);
        if (fit) crew.put(address, new TreeSet<>(words));
        else
            written.bad(
                    "-",
                    "is not an address and words it may write",
                    "write it as \"hall@millrace.example lost count\"; the words are "
                            + String.join(", ", new TreeSet<>(OrderMailSettings.CREW_WORDS)));
    }

    /** The token is a secret, and so never repeated in a problem. */
    private void tag(Written written, Map<String, String> tags) {
        String[] words = written.text().strip().split("\\s+");
        boolean fit = words.length == 2
                && words[1].matches(TOKEN)
                && !tags.containsKey(words[1])
                && customers.stream().anyMatch(customer -> customer.code().equals(words[0]));
        if (fit) tags.put(words[1], words[0]);
        else
            written.problems()
                    .add(
                            written.place(),
                            "what stands there is no customer's code and a token of its own",
                            "write it as \"C001 k7x2m9qa4t\": 10 to 40 small letters and digits, drawn by lot");
    }
}
