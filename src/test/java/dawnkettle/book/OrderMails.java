package dawnkettle.book;

import dawnkettle.book.ReadMail.Question;
import dawnkettle.book.ReadOrderMail.Written;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The corpus of order mails: each with what a careful clerk would do with it. */
final class OrderMails {
    private OrderMails() {}

    /**
     * One mail.
     *
     * @param expected a booking each, as "12-05 FIRM-400 24", "12-07 set MED-BKT 3" or "12-09 skip"
     * @param asked words that must be asked or shown as not read
     */
    record OrderMail(String customer, Written written, List<String> expected, List<String> asked) {}

    static List<OrderMail> read(String half) {
        String name = "/dawnkettle/order-mails/" + half + ".txt";
        try (InputStream in = OrderMails.class.getResourceAsStream(name)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            List<OrderMail> mails = new ArrayList<>();
            String[] parts = text.split("(?m)^# (?=C[0-9]{3} )");
            for (int i = 1; i < parts.length; i++)
                mails.add(mail(parts[i].lines().toList()));
            return mails;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static OrderMail mail(List<String> lines) {
        String[] head = lines.get(0).split(" ");
        List<String> body = new ArrayList<>();
        List<String> expected = new ArrayList<>();
        List<String> asked = new ArrayList<>();
        for (String line : lines.subList(2, lines.size())) {
            if (!line.startsWith("=>")) body.add(line);
            else if (line.startsWith("=> ?")) asked.add(line.substring(4).strip());
            else if (!line.equals("=> nothing"))
                expected.addAll(bookings(line.substring(2).strip()));
        }
        String subject = lines.get(1).substring("Subject:".length()).strip();
        Written written = new Written(subject, String.join("\n", body), LocalDate.parse(head[1]));
        return new OrderMail(head[0], written, expected, asked);
    }

    private static List<String> bookings(String line) {
        String day = line.substring(0, 5);
        List<String> all = new ArrayList<>();
        for (String one : line.substring(6).split(",")) all.add(day + " " + one.strip());
        return all;
    }

    /** A wish in the words of the corpus. */
    static String told(OrderWish wish) {
        String day = day(wish.day()) + " ";
        if (wish instanceof OrderWish.More more) return day + more.product() + " " + more.packs();
        if (wish instanceof OrderWish.SetTo set) return day + "set " + set.product() + " " + set.packs();
        if (wish instanceof OrderWish.Drop drop) return day + "drop " + drop.product();
        if (wish instanceof OrderWish.Twice twice) return day + "double " + twice.product();
        if (wish instanceof OrderWish.SameAs same) return day + "same " + day(same.as());
        return day + "skip";
    }

    private static String day(LocalDate day) {
        return day.toString().substring(5);
    }

    /** Whether all of the words stand in one of the questions or among what was passed over. */
    static boolean shows(ReadMail read, String words) {
        List<String> shown = new ArrayList<>(read.passedOver());
        read.questions().stream().map(Question::words).forEach(shown::add);
        return shown.stream().anyMatch(one -> bare(one).containsAll(bare(words)));
    }

    private static List<String> bare(String words) {
        return List.of(words.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"));
    }
}
