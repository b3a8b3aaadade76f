package dawnkettle.night;

import java.util.Locale;
import java.util.Set;

/**
 * The words of an HTML body as lines, read once from front to back: what is quoted or never shown is left out with all in it,
 * and where its end is missing all that follows is.
 */
final class PlainWords {
    private static final Set<String> LEFT_OUT = Set.of("style", "script", "head", "title", "blockquote");
    private static final Set<String> LINES = Set.of("br", "p", "div", "li", "tr", "h1", "h2", "h3", "h4", "h5", "h6");

    private final String html;
    private final StringBuilder words = new StringBuilder();
    private String within = "";
    private int depth;

    private PlainWords(String html) {
        this.html = html;
    }

    static String of(String html) {
        PlainWords read = new PlainWords(html.replaceAll("[\\r\\n]+", " "));
        read.all();
        return entities(read.words.toString());
    }

    private void all() {
        int at = 0;
        while (at < html.length()) {
            int open = html.indexOf('<', at);
            if (open < 0) open = html.length();
            if (depth == 0) words.append(html, at, open);
            at = open == html.length() ? open : after(open);
        }
    }

    /** Past a tag or a comment, or the end where it is never closed. */
    private int after(int open) {
        boolean isComment = html.startsWith("<!--", open);
        int close = isComment ? html.indexOf("-->", open) : html.indexOf('>', open);
        if (close < 0) return html.length();
        if (!isComment) tag(html.substring(open + 1, close));
        return isComment ? close + 3 : close + 1;
    }

    private void tag(String inside) {
        boolean closes = inside.startsWith("/");
        String name = name(closes ? inside.substring(1) : inside);
        if (depth > 0) {
            if (name.equals(within) && !inside.endsWith("/")) depth += closes ? -1 : 1;
        } else if (LEFT_OUT.contains(name) && !closes) {
            within = name;
            depth = 1;
        } else words.append(LINES.contains(name) ? '\n' : ' ');
    }

    private static String name(String tag) {
        int end = 0;
        while (end < tag.length() && Character.isLetterOrDigit(tag.charAt(end))) end++;
        return tag.substring(0, end).toLowerCase(Locale.ROOT);
    }

    private static String entities(String text) {
        return text.replace("&nbsp;", " ")
                .replace("&#160;", " ")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&");
    }
}
