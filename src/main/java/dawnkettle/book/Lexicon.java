package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import dawnkettle.shop.Product;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** The words that one mail can be read with: the list of its language first, then the shop's products, then the other lists. */
final class Lexicon {
    private static final Map<String, Kind> MARKS = Map.ofEntries(
            Map.entry(",", Kind.COMMA),
            Map.entry(";", Kind.PARTED),
            Map.entry("/", Kind.PARTED),
            Map.entry("|", Kind.NOISE),
            Map.entry("+", Kind.PARTED),
            Map.entry("&", Kind.PARTED),
            Map.entry("and", Kind.PARTED),
            Map.entry("y", Kind.PARTED),
            Map.entry(":", Kind.COLON),
            Map.entry("=", Kind.COLON),
            Map.entry("-", Kind.DASH),
            Map.entry("–", Kind.DASH),
            Map.entry("—", Kind.DASH),
            Map.entry("(", Kind.BRACKET),
            Map.entry("[", Kind.BRACKET),
            Map.entry("]", Kind.BRACKET),
            Map.entry(")", Kind.BRACKET),
            Map.entry("•", Kind.NOISE),
            Map.entry("·", Kind.NOISE),
            Map.entry("\"", Kind.NOISE),
            Map.entry("'", Kind.NOISE),
            Map.entry(".", Kind.STOP),
            Map.entry("!", Kind.STOP),
            Map.entry("?", Kind.QUESTION_MARK));

    private final Map<String, String> phrases = new HashMap<>();
    private final Map<String, String> codes = new HashMap<>();
    private final Spelling spelling = new Spelling();
    private final Map<String, List<Sense>> read = new HashMap<>();
    private final boolean dayFirst;
    /** Whether the mail writes "6 x milk" as well, so that its x is no part of a name. */
    private boolean times;

    /** How many words the longest phrase has that begins with a word. */
    private final Map<String, Integer> longest = new HashMap<>();

    private Lexicon(boolean dayFirst) {
        this.dayFirst = dayFirst;
    }

    /** Chosen by what stands in the mail: the list that knows most of its words. */
    static Lexicon of(OrderReading context, List<Word> mail) {
        List<OrderWords> lists = new ArrayList<>(context.words());
        OrderWords main = main(lists, mail);
        Lexicon made = new Lexicon(main.meanings().containsValue("order_of_dates day"));
        lists.remove(main);
        made.times = isTimes(mail);
        made.addAll(main, "");
        for (Product product : context.products()) {
            made.addCode(product.code());
            made.add(product.name(), "code " + product.code());
        }
        kindsByName(context.products()).forEach(made::add);
        made.phrases.forEach(made.spelling::learn);
        for (OrderWords other : lists) made.addAll(other, "number ");
        if (!context.names().isEmpty())
            made.phrases.put(Word.phrase(context.names().get(context.names().size() - 1)), "noise house");
        context.names().forEach(made::addName);
        made.phrases.keySet().forEach(made.spelling::accept);
        return made;
    }

    private static boolean isTimes(List<Word> mail) {
        for (int i = 2; i < mail.size(); i++)
            if (mail.get(i - 1).bare().equals("x")
                    && mail.get(i - 2).isFigure()
                    && mail.get(i).isLetters()
                    && !mail.get(i).bare().startsWith("firm")) return true;
        return false;
    }

    private static OrderWords main(List<OrderWords> lists, List<Word> mail) {
        OrderWords best = new OrderWords("", Map.of());
        long most = -1;
        for (OrderWords list : lists) {
            long known = mail.stream()
                    .filter(word -> word.isLetters() && list.knows(word.bare()))
                    .count();
            if (known > most) best = list;
            most = Math.max(most, known);
        }
        return best;
    }

    /** Words that stand in the names of one recipe's products only, as "smoked". */
    private static Map<String, String> kindsByName(List<Product> products) {
        Map<String, Set<String>> recipes = new LinkedHashMap<>();
        for (Product product : products)
            for (Word word : Word.in(product.name()))
                if (word.isLetters() && word.bare().length() > 3)
                    recipes.computeIfAbsent(word.bare(), w -> new TreeSet<>()).add(product.recipe());
        Map<String, String> kinds = new LinkedHashMap<>();
        recipes.forEach((word, of) -> {
            if (of.size() == 1) kinds.put(word, "kind " + of.iterator().next());
        });
        return kinds;
    }

    private void addAll(OrderWords list, String except) {
        list.meanings().forEach((phrase, meaning) -> {
            boolean left = meaning.startsWith("order_of_dates") || !except.isEmpty() && meaning.startsWith(except);
            if (!left) add(phrase, meaning);
        });
    }

    private void add(String phrase, String meaning) {
        String bare = Word.phrase(phrase);
        if (bare.isEmpty()) return;
        phrases.putIfAbsent(bare, meaning);
        measure(bare);
    }

    /** The customer's name or the shop's, whole and word by word, says nothing about an order. */
    private void addName(String name) {
        add(name, "noise name");
        for (Word word : Word.in(name))
            if (word.isLetters() && word.bare().length() > 2) phrases.putIfAbsent(word.bare(), "noise name");
    }

    private void measure(String phrase) {
        String[] words = phrase.split(" ");
        longest.merge(words[0], words.length, Math::max);
    }

    private void addCode(String code) {
        String bare = Word.phrase(code);
        codes.put(bare, "code " + code);
        measure(bare);
    }

    boolean dayFirst() {
        return dayFirst;
    }

    /** What a line means, word by word; the longest known phrase counts. */
    List<Sense> senses(String line) {
        return read.computeIfAbsent(line, this::read);
    }

    private List<Sense> read(String line) {
        List<Word> words = Word.in(line).stream().map(this::respelt).toList();
        List<Sense> senses = new ArrayList<>();
        for (int at = 0; at < words.size(); ) {
            String begun = begunWeekdays(words, at, senses);
            if (!begun.isEmpty()) {
                senses.add(new Sense(
                        Kind.BEGUN, begun, words.get(at).from(), words.get(at).until()));
                at++;
                continue;
            }
            int taken = phrase(words, at, senses);
            if (taken == 0) senses.add(single(words.get(at)));
            at += Math.max(1, taken);
        }
        return List.copyOf(senses);
    }

    /** "Mo 7:", "W 9 Dec": the weekdays that begin so, where a date follows. */
    private String begunWeekdays(List<Word> words, int at, List<Sense> before) {
        Word word = words.get(at);
        boolean begins = before.isEmpty()
                || before.get(before.size() - 1)
                        .is(Kind.COMMA, Kind.PARTED, Kind.STOP, Kind.DASH, Kind.COLON, Kind.BRACKET);
        if (!begins || !word.isLetters() || word.bare().length() > 2 || at + 2 >= words.size()) return "";
        String behind = meaning(words.subList(at + 2, at + 3)).orElse("");
        boolean dated = words.get(at + 1).isFigure()
                && (behind.startsWith("month")
                        || word.bare().length() == 2 && words.get(at + 2).bare().equals(":"));
        boolean lettered = before.isEmpty() && words.get(at + 1).bare().equals(":");
        if (!dated && !lettered) return "";
        Set<String> days = new TreeSet<>();
        phrases.forEach((phrase, meaning) -> {
            if (meaning.startsWith("weekday") && phrase.startsWith(word.bare()))
                days.add(meaning.substring(meaning.length() - 1));
        });
        return String.join("", days);
    }

    private int phrase(List<Word> words, int at, List<Sense> senses) {
        String other = "";
        int most = longest.getOrDefault(words.get(at).bare(), 1);
        for (int many = Math.min(most, words.size() - at); many >= 1; many--) {
            List<Word> those = words.subList(at, at + many);
            Optional<String> meaning = meaning(those);
            if (meaning.isEmpty()) continue;
            if (manyTimes(those, senses)) {
                other = isApart(words, at) && !times ? " " + meaning.get() : "";
                continue;
            }
            senses.add(sense(
                    meaning.get() + other,
                    those.get(0).from(),
                    those.get(many - 1).until()));
            return many;
        }
        return 0;
    }

    /** "24 x firm" is 24 times, though "x firm" alone is a kind. */
    private static boolean manyTimes(List<Word> words, List<Sense> before) {
        if (words.size() < 2 || !words.get(0).bare().equals("x") || before.isEmpty()) return false;
        Sense last = before.get(before.size() - 1);
        return last.is(Kind.NUMBER, Kind.DOZEN) && words.get(1).isLetters();
    }

    /** "16 x firm": between blanks the x may be of either. */
    private static boolean isApart(List<Word> words, int at) {
        return at > 0 && words.get(at).from() > words.get(at - 1).until();
    }

    private Optional<String> meaning(List<Word> words) {
        String joined = String.join(" ", words.stream().map(Word::bare).toList());
        String code = codes.get(joined);
        if (code != null && isUnbroken(words)) return Optional.of(code);
        return Optional.ofNullable(phrases.get(joined))
                .or(() -> Optional.ofNullable(phrases.get(singular(joined))).map(Lexicon::ofMany));
    }

    /** "On Fridays" is no single day, and who "takes" something is somebody else. */
    private static String ofMany(String meaning) {
        if (meaning.equals("noise want")) return "unknown";
        return meaning.startsWith("weekday") ? "unsure" : meaning;
    }

    private static boolean isUnbroken(List<Word> words) {
        for (int i = 1; i < words.size(); i++)
            if (words.get(i).from() != words.get(i - 1).until()) return false;
        return true;
    }

    private String singular(String phrase) {
        if (phrase.length() > 4
                && phrase.endsWith("es")
                && phrases.containsKey(phrase.substring(0, phrase.length() - 2)))
            return phrase.substring(0, phrase.length() - 2);
        return phrase.length() > 3 && phrase.endsWith("s") ? phrase.substring(0, phrase.length() - 1) : phrase;
    }

    private Sense single(Word word) {
        Kind mark = mark(word.bare());
        if (mark != Kind.UNKNOWN) return new Sense(mark, "", word.from(), word.until());
        if (word.isFigure()) return figure(word);
        return new Sense(Kind.UNKNOWN, word.bare(), word.from(), word.until());
    }

    private static Kind mark(String bare) {
        if (MARKS.containsKey(bare)) return MARKS.get(bare);
        if (bare.matches("[-=]{1,3}>|[→➔]")) return Kind.COLON;
        if (bare.matches("\\.{2,}|…|-{2,}|_{2,}")) return Kind.DASH;
        boolean picture = Character.getType(bare.codePointAt(0)) == Character.OTHER_SYMBOL;
        return picture && bare.codePointAt(0) > 0x2000 || bare.matches("[_~^\uFE0F\u200D]") ? Kind.NOISE : Kind.UNKNOWN;
    }

    /** The word with its slips put right, where it is certain which was meant. */
    private Word respelt(Word word) {
        boolean looked =
                word.isLetters() && !MARKS.containsKey(word.bare()) && !phrases.containsKey(singular(word.bare()));
        return looked ? new Word(spelling.of(word.bare()), word.from(), word.until()) : word;
    }

    private static Sense figure(Word word) {
        String bare = word.bare();
        Kind kind = Kind.NUMBER;
        if (bare.contains(":")) kind = Kind.CLOCK;
        else if (bare.matches("\\d{6,}|\\d+[.,]\\d{3,}")) kind = Kind.UNKNOWN;
        else if (bare.matches("\\d+\\p{L}+")) kind = Kind.ORDINAL;
        else if (bare.matches("\\d+[/-].*|\\d+\\.\\d+\\..*")) kind = Kind.DATE;
        String value = kind == Kind.ORDINAL ? bare.replaceAll("\\D", "") : bare.replace(',', '.');
        if (kind == Kind.ORDINAL && value.length() > 2) kind = Kind.UNKNOWN;
        return new Sense(kind, value, word.from(), word.until());
    }

    static Sense sense(String meaning, int from, int until) {
        int blank = meaning.indexOf(' ');
        String name = blank < 0 ? meaning : meaning.substring(0, blank);
        String value = blank < 0 ? "" : meaning.substring(blank + 1).strip();
        return new Sense(Kind.valueOf(name.toUpperCase(Locale.ROOT)), value, from, until);
    }
}
