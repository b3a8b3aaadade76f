package dawnkettle.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Lines of a printed form as a person would write them: an item and its quantity in one line, without the form's own numbers. */
final class FormRows {
    private static final Pattern ITEM = Pattern.compile("(?iu)(?:item|product|article|art[ií]culo|producto)\\s*:(.*)");
    private static final Pattern QUANTITY = Pattern.compile("(?iu)(?:qty|quantity|cantidad)\\s*:(.*)");
    private static final Pattern COUNT = Pattern.compile("(?iu)\\d{1,4}(?:\\s+(?:cases?|cajas?))?");
    private static final Pattern ARTICLE = Pattern.compile("(\\p{Lu}{1,4})-\\p{Lu}?\\d{1,5}\\s+(?=\\p{L})");
    private static final Pattern OWN_NUMBER = Pattern.compile("(?:PO|P\\.O\\.)\\s+\\p{Lu}{1,4}-\\d+\\s*/\\s*");
    private static final Pattern RULE = Pattern.compile("[\\s|+:=-]*-{3,}[\\s|+:=-]*");

    /** 03-Dec-2026 */
    private static final Pattern DAY = Pattern.compile("\\b(\\d{1,2})-(\\p{L}{3,10})-(\\d{4})\\b");

    private FormRows() {}

    /** @param codes the shop's own product codes, which are no numbers of the form @param names whether words name a product */
    static List<String> of(List<String> lines, Set<String> codes, Predicate<String> names) {
        List<String> whole = lines.stream()
                .filter(line -> !(line.startsWith("|") && RULE.matcher(line).matches()))
                .toList();
        whole = FormTable.read(whole, names);
        return paired(withoutArticles(whole, codes));
    }

    /** "Item: firm half blocks" and "Qty: 36", or the other way round, where they alternate through all of the mail. */
    private static List<String> paired(List<String> lines) {
        List<String> labelled = lines.stream().filter(FormRows::isLabelled).toList();
        if (labelled.size() < 2 || labelled.size() % 2 != 0) return lines;
        boolean itemFirst = ITEM.matcher(labelled.get(0)).matches();
        for (int i = 0; i < labelled.size(); i++)
            if (ITEM.matcher(labelled.get(i)).matches() != (itemFirst == (i % 2 == 0))) return lines;
        List<String> joined = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            boolean pair = isLabelled(lines.get(i)) && i + 1 < lines.size() && isLabelled(lines.get(i + 1));
            String entry = pair ? entry(lines, itemFirst ? i : i + 1, itemFirst ? i + 1 : i) : "";
            joined.add(entry.isEmpty() ? lines.get(i) : entry);
            if (pair && entry.isEmpty()) joined.add(lines.get(i + 1));
            if (pair) i++;
        }
        return joined;
    }

    private static boolean isLabelled(String line) {
        return ITEM.matcher(line).matches() || QUANTITY.matcher(line).matches();
    }

    private static String entry(List<String> lines, int item, int quantity) {
        Matcher what = ITEM.matcher(lines.get(item));
        Matcher count = QUANTITY.matcher(lines.get(quantity));
        if (!what.matches() || !count.matches()) return "";
        String product = what.group(1).strip();
        String many = count.group(1).strip();
        return COUNT.matcher(many).matches() && product.matches(".*\\p{L}.*") ? many + " " + product : "";
    }

    /** "QG-T01 firm bucket x 1": numbers of the customer's own, in two lines at least that begin alike. */
    private static List<String> withoutArticles(List<String> lines, Set<String> codes) {
        return lines.stream()
                .map(line -> OWN_NUMBER.matcher(line).replaceFirst(""))
                .map(line -> DAY.matcher(line).replaceAll("$1 $2 $3"))
                .map(line ->
                        isArticle(line, lines, codes) ? ARTICLE.matcher(line).replaceFirst("") : line)
                .toList();
    }

    private static boolean isArticle(String line, List<String> lines, Set<String> codes) {
        Matcher own = ARTICLE.matcher(line);
        if (!own.lookingAt() || codes.contains(own.group().strip())) return false;
        String begins = own.group(1);
        boolean shops = codes.stream().anyMatch(code -> code.startsWith(begins + "-"));
        return !shops
                && lines.stream()
                                .filter(other -> other.startsWith(begins + "-"))
                                .count()
                        > 1;
    }
}
