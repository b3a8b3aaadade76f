package dawnkettle.book;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The text of a mail's body that may be HTML: blocks become lines, quotations and what is never shown are left out. */
final class PlainBody {
    private static final Pattern IS_HTML = Pattern.compile(
            "<(?:!doctype html|html|body|p|div|br|table|ul|ol|li|span|b|font)\\b[^<>]{0,500}>",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern TAG = Pattern.compile("</?([a-zA-Z][a-zA-Z0-9]*)[^<>]*>");
    private static final Pattern ENTITY = Pattern.compile("&(#[0-9]{1,7}|#[xX][0-9a-fA-F]{1,6}|[a-zA-Z]{2,8});");
    private static final String LINES = " p div br li ul ol tr table h1 h2 h3 h4 h5 h6 blockquote hr section ";
    private static final String UNSEEN = " style script head title blockquote ";
    private static final Map<String, String> NAMED = Map.of(
            "amp", "&", "lt", "<", "gt", ">", "quot", "\"", "apos", "'", "nbsp", " ", "frac12", "½", "times", "×");

    private PlainBody() {}

    static String of(String body) {
        String plain = IS_HTML.matcher(body).find() ? withoutTags(body) : body;
        return plain.replace('\u00A0', ' ')
                .replace('\u202F', ' ')
                .replace("\u200B", "")
                .replace("\uFEFF", "");
    }

    private static String withoutTags(String html) {
        StringBuilder text = new StringBuilder();
        Matcher tag = TAG.matcher(html.replaceAll("[\\r\\n]+", " "));
        String whole = html.replaceAll("[\\r\\n]+", " ");
        String unseen = "";
        int depth = 0;
        int at = 0;
        boolean within = false;
        while (tag.find()) {
            if (depth == 0) text.append(whole, at, tag.start());
            at = tag.end();
            String name = tag.group(1).toLowerCase(Locale.ROOT);
            boolean closes = tag.group().startsWith("</");
            boolean cell = name.equals("td") || name.equals("th");
            if (cell) within = !closes;
            if (name.equals("tr") || name.equals("table")) within = false;
            if (depth == 0 && LINES.contains(" " + name + " ")) text.append(within ? ' ' : '\n');
            if (depth == 0 && !closes && UNSEEN.contains(" " + name + " ")) unseen = name;
            if (depth == 0 && cell && !closes && !text.toString().endsWith("\n")) text.append('\t');
            if (name.equals(unseen)) depth = Math.max(0, depth + (closes ? -1 : 1));
            if (depth == 0) unseen = "";
        }
        if (depth == 0) text.append(whole.substring(at));
        return entities(text.toString());
    }

    private static String entities(String text) {
        return ENTITY.matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(entity(found.group(1), found.group())));
    }

    private static String entity(String name, String written) {
        if (!name.startsWith("#")) return NAMED.getOrDefault(name.toLowerCase(Locale.ROOT), written);
        boolean hex = name.charAt(1) == 'x' || name.charAt(1) == 'X';
        int point = Integer.parseInt(name.substring(hex ? 2 : 1), hex ? 16 : 10);
        return Character.isValidCodePoint(point) && !Character.isISOControl(point) ? Character.toString(point) : " ";
    }
}
