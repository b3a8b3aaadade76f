package dawnkettle.book;

import dawnkettle.book.ReadOrderMail.Written;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Order mails put together at random from ways in which people write, each with what it means.
 *
 * <p>The customer is C100, which takes firm 400 g, pouches 150 g and family packs of medium; its van goes every weekday and
 * on Saturday. The words are this class's own, not the reader's.
 */
final class AnyOrderMail {
    static final String CUSTOMER = "C100";

    private record Good(String code, int inCase, List<String> names) {}

    private static final List<Good> GOODS = List.of(
            new Good(
                    "FIRM-400",
                    12,
                    List.of("firm", "firm 400", "firm tofu", "firm 400g", "Firm tofu 400 g", "FIRM-400")),
            new Good(
                    "FRY-150",
                    20,
                    List.of(
                            "pouches",
                            "fried pouches",
                            "pouches 150",
                            "Fried pouches 150 g",
                            "pouch",
                            "packs of pouches")),
            new Good(
                    "MED-750",
                    6,
                    List.of("family packs", "medium family packs", "medium 750", "family medium", "medium 750 g")),
            new Good("XFIRM-350", 16, List.of("extra firm 350", "xf 350", "x-firm 350 g", "Extra firm tofu 350 g")),
            new Good("MILK-1L", 12, List.of("milk 1L", "litre milk", "soy milk 1 l", "soy milk, 1 litre")),
            new Good("GING-500", 20, List.of("ginger", "ginger milk", "ginger soy milk", "ginger 500")));

    private static final List<String> OPENINGS = List.of(
            "",
            "",
            "Hi",
            "Hello there,",
            "Good morning",
            "Dear Millrace,",
            "Hi all, hope you are well!",
            "Morning!",
            "Hey team",
            "Good evening,");
    private static final List<String> CLOSINGS = List.of(
            "",
            "",
            "Thanks",
            "Thanks, Wilma",
            "Kind regards\nWilma Tarn\nOsterfell Co-op",
            "Cheers",
            "Ta!",
            "Many thanks in advance",
            "Best wishes,\nW.",
            "Thank you very much.\n\nSent from my phone",
            "thx");
    private static final List<String> ASKING = List.of(
            "Please send",
            "Could we have",
            "We would like",
            "Can you bring us",
            "We need",
            "Order:",
            "I'd like to order",
            "Please could you send us",
            "We'll take",
            "Can I get",
            "May we order",
            "Kindly deliver");
    private static final List<String> WORDS = List.of(
            "zero",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen");

    private final Random random;
    private final LocalDate mail;
    private final List<String> expected = new ArrayList<>();

    AnyOrderMail(long seed) {
        random = new Random(seed);
        mail = LocalDate.parse("2026-12-03").plusDays(random.nextInt(12));
    }

    <T> T any(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    List<String> expected() {
        return expected;
    }

    LocalDate mailDay() {
        return mail;
    }

    Written written(String subject, String body) {
        return new Written(subject, body, mail);
    }

    /** A whole mail. */
    Written mail() {
        boolean subject = random.nextInt(5) == 0;
        List<LocalDate> days = subject ? List.of(day(1)) : days();
        String said = say(days.get(0));
        String core = subject ? block(days.get(0), "") : order(days);
        String body = any(OPENINGS) + "\n" + core + "\n" + any(CLOSINGS);
        return written(subject ? any(List.of("Order for ", "order ", "", "tofu for ")) + said : "order", body);
    }

    /** Sentences about sesame that order none of it; what else stands in the mail may be booked or asked. */
    static final List<String> NO_ORDER = List.of(
            "Last time we got 12 sesame 350 and 6 sesame 200.",
            "We still have 6 sesame 350 left.",
            "Do you have 12 sesame 350?",
            "How much are 12 sesame 350?",
            "6-8 sesame 350 would be nice some day.",
            "We may need 12 sesame 350 later.",
            "If there is room, 12 sesame 350.",
            "12 sesame 350 if you have them.",
            "Don't send the 12 sesame 350.",
            "We did not get our 12 sesame 350 on Monday.",
            "12 sesame 350 were missing.",
            "Not 12 sesame 350.",
            "You sent 6 sesame 350, 12 sesame 200 instead.",
            "12 sesame 350 or 6 sesame 200, whichever is easier.",
            "About 12 sesame 350.",
            "12 sesame 350 at 3.20 each.",
            "My neighbour ordered 12 sesame 350 for Friday.",
            "12 sesame 350 every Friday from now on.",
            "Perhaps 12 sesame 350.",
            "Up to 12 sesame 350.",
            "Please tell me whether 12 sesame 350 would fit.",
            "What would 12 sesame 350 cost?",
            "I wanted 12 sesame 350 but changed plans.",
            "Had you 12 sesame 350 for us on Saturday?",
            "Unless I call, no 12 sesame 350.",
            "12 sesame 350 arrived broken.",
            "Refund the 12 sesame 350 please.",
            "We paid for 12 sesame 350.",
            "12 sesame 350? Not this time.",
            "Should we take 12 sesame 350?",
            "I would have liked 12 sesame 350.",
            "The 12 sesame 350 of Tuesday were lovely.",
            "A friend takes 12 sesame 350 from you.",
            "Next month perhaps 12 sesame 350.",
            "Hold 12 sesame 350 for me till I know.",
            "The menu has 12 sesame 350 dishes.",
            "Our freezer holds 12 sesame 350.",
            "We are out of sesame 350: 12 people asked.",
            "12 people asked for sesame 350.",
            "I am thinking of 12 sesame 350.");

    /** Sentences after which nothing that stands before them is certain. */
    static final List<String> TURNS = List.of(
            "No wait, make that 3.",
            "Scratch that.",
            "Sorry, ignore this.",
            "Actually, hold off until I call.",
            "Please don't send it yet.",
            "Forget it.",
            "On second thoughts, wait.",
            "That was wrong, I will write again.",
            "Cancel that.",
            "This is only a draft.",
            "Not confirmed yet!",
            "Sorry, 3.",
            "I meant 3.",
            "Make it 3 instead.",
            "No, 3.",
            "Change of plan, will ring you.",
            "Disregard the above.",
            "To be confirmed tomorrow.",
            "Never mind.",
            "Please wait for my call before you make it.",
            "This replaces my earlier mail.");

    /** A mail with such a sentence at its end. */
    Written mailWith(String sentence) {
        Written plain = mail();
        int at = plain.body().strip().length();
        for (String closing : CLOSINGS)
            if (!closing.isEmpty() && plain.body().strip().endsWith(closing))
                at = Math.min(at, plain.body().strip().length() - closing.length());
        String body = plain.body().strip();
        String before = body.substring(0, at).strip();
        String between = any(List.of("\n", before.matches("(?s).*[.!?]") ? " " : ". "));
        return written(plain.subject(), before + between + sentence + "\n" + body.substring(at));
    }

    private String order(List<LocalDate> days) {
        StringBuilder text = new StringBuilder();
        boolean lists = days.size() > 1 || random.nextBoolean();
        for (LocalDate day : days)
            text.append(lists ? block(day, say(day)) : sentence(day)).append('\n');
        return text.toString();
    }

    /** One to three days that go forward. */
    private List<LocalDate> days() {
        List<LocalDate> days = new ArrayList<>();
        int ahead = 0;
        int many = 1 + random.nextInt(3);
        for (int i = 0; i < many; i++) {
            LocalDate day = day(ahead + 1);
            ahead = (int) (day.toEpochDay() - mail.toEpochDay());
            if (ahead < 7) days.add(day);
        }
        return days;
    }

    /** A day on which the van goes, so many days ahead or a few more, and no weekday of the mail's own. */
    private LocalDate day(int ahead) {
        LocalDate day = mail.plusDays(ahead + random.nextInt(2));
        while (day.getDayOfWeek() == DayOfWeek.SUNDAY
                || day.getDayOfWeek() == mail.getDayOfWeek()
                || day.equals(LocalDate.parse("2026-12-08"))) day = day.plusDays(1);
        return day;
    }

    private String say(LocalDate day) {
        String name = day.getDayOfWeek().getDisplayName(TextStyle.FULL, Locale.ENGLISH);
        String brief = day.getDayOfWeek().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
        String month = day.format(DateTimeFormatter.ofPattern("MMMM", Locale.ENGLISH));
        int date = day.getDayOfMonth();
        return any(List.of(
                name,
                brief,
                name.toLowerCase(Locale.ROOT),
                brief.toUpperCase(Locale.ROOT),
                name + " " + date + " " + month,
                name + ", " + month + " " + date,
                brief + " " + date + ending(date),
                name + " the " + date + ending(date),
                brief + " " + day.getMonthValue() + "/" + date,
                date + " " + month + " 2026",
                month + " " + date + ending(date),
                day.toString()));
    }

    private static String ending(int date) {
        if (date / 10 == 1) return "th";
        return date % 10 == 1 ? "st" : date % 10 == 2 ? "nd" : date % 10 == 3 ? "rd" : "th";
    }

    private String block(LocalDate day, String head) {
        StringBuilder text = new StringBuilder();
        boolean inLine = random.nextInt(3) == 0;
        if (!head.isEmpty())
            text.append(any(List.of("", "", "For ")))
                    .append(head)
                    .append(inLine ? ": " : any(List.of(":", "", " please")));
        if (!head.isEmpty() && !inLine) text.append('\n');
        String between = inLine ? any(List.of(", ", " / ", "; ", " + ")) : any(List.of("\n", "\n", "\n- "));
        if (!inLine && between.contains("-")) text.append("- ");
        return text.append(String.join(between, items(day))).toString();
    }

    private String sentence(LocalDate day) {
        List<String> items = items(day);
        String last = items.size() > 1 ? " and " + items.remove(items.size() - 1) : "";
        String list = String.join(", ", items) + last;
        String said = any(List.of("for ", "on ", "by ")) + say(day);
        String asking = any(ASKING);
        boolean question = asking.matches("(?:Could|Can|May) .*");
        return any(List.of(
                        asking + " " + list + " " + said,
                        asking + " " + list + " " + said + " please",
                        upper(said) + " " + asking.replace(":", "").toLowerCase(Locale.ROOT) + " " + list))
                + (question ? "?" : ".");
    }

    private static String upper(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    private List<String> items(LocalDate day) {
        List<Good> left = new ArrayList<>(GOODS);
        List<String> items = new ArrayList<>();
        int many = 1 + random.nextInt(4);
        for (int i = 0; i < many; i++) {
            Good good = left.remove(random.nextInt(left.size()));
            items.add(item(day, good));
        }
        return items;
    }

    private String item(LocalDate day, Good good) {
        int packs = 2 + random.nextInt(11);
        int form = random.nextInt(9);
        String name = any(good.names());
        int booked = form == 6 ? good.inCase() : form == 7 ? 12 : packs;
        boolean counted = name.matches(".*\\bpacks? of.*");
        expected.add(day.toString().substring(5) + " " + good.code() + " " + booked);
        if (counted) return packs == booked ? packs + " " + name : form == 7 ? "a dozen " + name : booked + " " + name;
        return switch (form) {
            case 0 -> packs + " " + name;
            case 1 -> packs + " x " + (name.startsWith("firm") || name.startsWith("Firm") ? "FIRM-400" : name);
            case 2 -> name + " x " + packs;
            case 3 -> WORDS.get(packs) + " " + name;
            case 4 -> name + ": " + packs;
            case 5 -> name + " - " + packs;
            case 6 -> any(List.of("1 case ", "a case of ", "one box of ", "1 cs ")) + name;
            case 7 -> any(List.of("a dozen ", "1 dozen ", "one dozen ")) + name;
            default -> packs + " " + name.replace("firm", "frim").replace("medium", "meduim");
        };
    }
}
