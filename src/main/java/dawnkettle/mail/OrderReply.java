package dawnkettle.mail;

import dawnkettle.book.OrderWish;
import dawnkettle.book.ReadMail;
import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Lines;
import dawnkettle.mail.Letter.Section;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/** The answer to a customer's order mail: line by line what was understood, what was not, and until when it can be changed. */
public final class OrderReply {
    private static final int LONGEST_WORDS = 160;
    private static final int LONGEST_SUBJECT = 120;

    private final Shop shop;
    private final Function<LocalDate, Optional<ZonedDateTime>> closes;

    private OrderReply(Shop shop, Function<LocalDate, Optional<ZonedDateTime>> closes) {
        this.shop = shop;
        this.closes = closes;
    }

    /**
     * The mail that is answered.
     *
     * @param id id of the answer, as of {@link Mail#id}
     * @param to the one address that is answered
     * @param subject as it came; nothing in it counts but its letters
     */
    public record Answered(String id, String to, String subject) {}

    /** @param closes until when an order for a day of delivery can be changed; empty where that is over or not known */
    public static Mail of(
            Answered answered, ReadMail read, Shop shop, Function<LocalDate, Optional<ZonedDateTime>> closes) {
        Letter letter = new OrderReply(shop, closes).letter(read);
        Mail.Body body = new Mail.Body(LetterText.of(letter), LetterHtml.of(letter), List.of());
        return new Mail(answered.id(), List.of(answered.to()), subject(answered.subject()), body, List.of());
    }

    private static String subject(String written) {
        String plain = Plain.line(written).replaceFirst("(?i)^(?:re\\s*:\\s*)+", "");
        return "Re: " + cut(plain.isBlank() ? "your order" : plain, LONGEST_SUBJECT);
    }

    private static String cut(String text, int most) {
        String line = Plain.line(text);
        if (line.codePointCount(0, line.length()) <= most) return line;
        return line.substring(0, line.offsetByCodePoints(0, most)) + " …";
    }

    private Letter letter(ReadMail read) {
        boolean well = read.questions().isEmpty();
        List<Section> sections = new ArrayList<>();
        days(read).forEach((day, wishes) -> sections.add(section(day, wishes)));
        if (!well) sections.add(new Section("Please answer", new Bullets(questions(read))));
        if (!read.passedOver().isEmpty())
            sections.add(new Section(
                    "Not read as an order",
                    new Bullets(
                            read.passedOver().stream().map(OrderReply::quoted).toList())));
        return new Letter(shop.house().name() + ", your order", well, lead(read), sections, foot());
    }

    private static Map<LocalDate, List<OrderWish>> days(ReadMail read) {
        Map<LocalDate, List<OrderWish>> days = new TreeMap<>();
        read.understood()
                .forEach(wish -> days.computeIfAbsent(wish.day(), day -> new ArrayList<>())
                        .add(wish));
        return days;
    }

    private static List<String> lead(ReadMail read) {
        int lines = read.understood().size();
        int open = read.questions().size();
        String noted =
                lines == 0 ? "Nothing is booked yet." : lines == 1 ? "1 line is booked." : lines + " lines are booked.";
        String asked =
                open == 0 ? "Nothing is open." : open == 1 ? "1 needs your answer." : open + " need your answer.";
        return List.of(noted + " " + asked);
    }

    private Section section(LocalDate day, List<OrderWish> wishes) {
        String until = closes.apply(day)
                .map(end -> "Can be changed until " + Figures.day(end.toLocalDate()) + ", " + time(end) + ".")
                .orElse("Can no longer be changed by mail; please call us.");
        return new Section(
                Figures.day(day), new Bullets(wishes.stream().map(this::told).toList()), Lines.of(until));
    }

    private static String time(ZonedDateTime end) {
        return end.toLocalTime().withSecond(0).withNano(0).toString();
    }

    private String told(OrderWish wish) {
        return meant(wish) + ", from your words " + quoted(wish.words());
    }

    private String meant(OrderWish wish) {
        if (wish instanceof OrderWish.More more) return more.packs() + " × " + name(more.product());
        if (wish instanceof OrderWish.SetTo set)
            return name(set.product()) + ": " + set.packs() + " from now on, in place of what was there";
        if (wish instanceof OrderWish.Drop drop) return name(drop.product()) + ": none";
        if (wish instanceof OrderWish.Twice twice) return name(twice.product()) + ": twice what was there";
        if (wish instanceof OrderWish.SameAs same) return "the same as on " + Figures.day(same.as());
        return "nothing at all that day";
    }

    private String name(String code) {
        return shop.findProduct(code).map(Product::name).orElse(code) + " (" + code + ")";
    }

    private static List<String> questions(ReadMail read) {
        return read.questions().stream()
                .map(question -> quoted(question.words()) + ": " + question.why())
                .toList();
    }

    private static String quoted(String words) {
        return "\"" + cut(words, LONGEST_WORDS) + "\"";
    }

    private static List<String> foot() {
        return List.of(
                "Is a line wrong? Answer with the day, the packs and the product, as in: Friday: 12 firm 400.",
                "What stands under \"Please answer\" is not booked until you write it anew.");
    }
}
