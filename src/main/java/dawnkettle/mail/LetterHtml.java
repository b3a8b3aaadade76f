package dawnkettle.mail;

import dawnkettle.mail.Letter.Block;
import dawnkettle.mail.Letter.Bullets;
import dawnkettle.mail.Letter.Column;
import dawnkettle.mail.Letter.Grid;
import dawnkettle.mail.Letter.Lines;
import dawnkettle.mail.Letter.Section;
import dawnkettle.mail.Letter.Shown;
import java.util.List;

/** A letter as HTML for a phone: one column, the phone's own typeface, nothing fetched from anywhere. */
final class LetterHtml {
    /** Up to so many columns leave room for names on a phone. */
    private static final int FEW = 4;

    private static final String MAIN = "<main>\n";

    /** What a phone shows beside the subject, before the mail is opened; nobody sees it in the mail. */
    private static final String PREVIEW = "<div style=\"display:none;max-height:0;overflow:hidden\">";

    /** Letters of it that phones show, at the most (common practice, no source). */
    private static final int PREVIEWED = 140;

    private static final String STYLE = """
            :root{color-scheme:light dark}
            body{margin:0;background:#fff;color:#1c1c1a;font:16px/1.45 system-ui,-apple-system,"Segoe UI",Roboto,"Noto Sans",sans-serif}
            main{max-width:640px;margin:0 auto;padding:12px}
            h1{font-size:20px;line-height:1.25;margin:4px 0 10px}
            h2{font-size:17px;margin:24px 0 6px;padding-bottom:3px;border-bottom:1px solid #b9b6ac}
            p{margin:4px 0}
            ul{margin:4px 0;padding-left:20px}
            li{margin:4px 0}
            li,p,h1,h2{overflow-wrap:anywhere}
            .lead{border-left:6px solid #2f6b3d;background:#eef4ee;padding:10px 12px}
            .lead.bad{border-left-color:#a3261b;background:#fbeeec}
            .lead p:first-child{font-weight:700}
            .notice{border:2px solid #a3261b;padding:8px 10px;margin-bottom:10px}
            table{border-collapse:collapse;width:100%;margin:8px 0 12px}
            caption{text-align:left;font-weight:600;padding:4px 0}
            th,td{text-align:left;vertical-align:top;padding:6px 8px 6px 0;border-bottom:1px solid #dcd9d0;font-weight:400}
            thead th{font-weight:600;vertical-align:bottom}
            tbody th{overflow-wrap:anywhere}
            .few tbody th{min-width:76px}
            th:last-child,td:last-child{padding-right:0}
            .n{text-align:right;white-space:nowrap;font-variant-numeric:tabular-nums}
            thead .n{white-space:normal}
            img{display:block;width:100%;height:auto;margin:8px 0;background:#fff}
            footer{margin-top:24px;padding-top:8px;border-top:1px solid #b9b6ac;color:#55524a}
            @media (prefers-color-scheme:dark){
            body{background:#161614;color:#eceae3}
            h2,footer{border-color:#57544b}
            .lead{background:#1d2a20;border-left-color:#7fc08e}
            .lead.bad{background:#341e1b;border-left-color:#f08a7c}
            .notice{border-color:#f08a7c}
            th,td{border-bottom-color:#3a3832}
            footer{color:#b5b1a5}
            }
            """;

    private final StringBuilder html = new StringBuilder();

    private LetterHtml() {}

    static String of(Letter letter) {
        LetterHtml made = new LetterHtml();
        made.write(letter);
        return made.html.toString();
    }

    /** The same page with a line above everything else. */
    static String withFirstLine(String html, String line) {
        int main = html.indexOf(MAIN);
        if (main < 0) throw new IllegalArgumentException("the mail has no place for a first line");
        int at = main + MAIN.length();
        String told = html.substring(0, at) + "<p class=\"notice\">" + Plain.html(line) + "</p>\n" + html.substring(at);
        return told.replace(PREVIEW, PREVIEW + Plain.html(line) + " ");
    }

    private void write(Letter letter) {
        html.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
                .append("<meta name=\"color-scheme\" content=\"light dark\">\n");
        element("title", letter.title());
        html.append("<style>\n")
                .append(STYLE)
                .append("</style>\n</head>\n<body>\n")
                .append(PREVIEW)
                .append(Plain.html(preview(letter)))
                .append("</div>\n")
                .append(MAIN);
        element("h1", letter.title());
        html.append(letter.well() ? "<div class=\"lead\">\n" : "<div class=\"lead bad\">\n");
        letter.lead().forEach(line -> element("p", line));
        html.append("</div>\n");
        letter.spoken().forEach(this::section);
        if (!letter.foot().isEmpty()) {
            html.append("<footer>\n");
            letter.foot().forEach(line -> element("p", line));
            html.append("</footer>\n");
        }
        html.append("</main>\n</body>\n</html>\n");
    }

    private static String preview(Letter letter) {
        String whole = Plain.line(String.join(" ", letter.lead()));
        if (whole.length() <= PREVIEWED) return whole;
        return whole.substring(0, Math.max(0, whole.lastIndexOf(' ', PREVIEWED))) + " …";
    }

    private void section(Section section) {
        element("h2", section.heading());
        section.blocks().forEach(this::block);
    }

    private void block(Block block) {
        if (block instanceof Lines lines) lines.lines().forEach(line -> element("p", line));
        else if (block instanceof Bullets bullets) bullets(bullets.items());
        else if (block instanceof Shown shown) picture(shown);
        else if (block instanceof Grid grid) grid(grid);
    }

    private void bullets(List<String> items) {
        html.append("<ul>\n");
        items.forEach(item -> element("li", item));
        html.append("</ul>\n");
    }

    private void picture(Shown shown) {
        html.append("<img src=\"cid:")
                .append(Plain.html(shown.cid()))
                .append("\" alt=\"")
                .append(Plain.html(shown.alternative()))
                .append("\">\n");
    }

    private void grid(Grid grid) {
        html.append(grid.columns().size() <= FEW ? "<table class=\"few\">\n" : "<table>\n");
        element("caption", grid.caption());
        html.append("<thead><tr>\n");
        for (Column column : grid.columns()) cell("th scope=\"col\"", column, column.heading());
        html.append("</tr></thead>\n<tbody>\n");
        for (List<String> row : grid.rows()) {
            html.append("<tr>\n");
            for (int i = 0; i < row.size(); i++)
                cell(i == 0 ? "th scope=\"row\"" : "td", grid.columns().get(i), row.get(i));
            html.append("</tr>\n");
        }
        html.append("</tbody>\n</table>\n");
    }

    private void cell(String tag, Column column, String text) {
        html.append("<").append(tag).append(column.figures() ? " class=\"n\">" : ">");
        html.append(Plain.html(text)).append("</").append(tag, 0, 2).append(">\n");
    }

    private void element(String tag, String text) {
        html.append("<").append(tag).append(">");
        html.append(Plain.html(text)).append("</").append(tag).append(">\n");
    }
}
