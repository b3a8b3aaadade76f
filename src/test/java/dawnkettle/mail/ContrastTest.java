package dawnkettle.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The colours of a mail, light and dark, against WCAG 2.2: text 4.5 to 1 (1.4.3, AA), the bar that tells good from bad 3 to 1
 * (1.4.11). Luminance by its definition of relative luminance, with the threshold 0.04045 of sRGB (IEC 61966-2-1).
 */
class ContrastTest {
    private static final String HTML = LetterHtml.of(new Letter("x", true, List.of("x"), List.of(), List.of("x")));
    private static final String DARK = "@media (prefers-color-scheme:dark){";

    /** The colour of a property of a rule; in the dark the light rule holds where there is none. */
    private static String colour(boolean dark, String rule, String property) {
        String style = HTML.substring(HTML.indexOf("<style>"), HTML.indexOf("</style>"));
        int at = style.indexOf(DARK);
        Map<String, String> found = new HashMap<>();
        for (String part : dark
                ? List.of(style.substring(0, at), style.substring(at + DARK.length()))
                : List.of(style.substring(0, at))) {
            Matcher rules = Pattern.compile("(?m)^([^{}\n]+)\\{([^}]*)}").matcher(part);
            while (rules.find())
                if (List.of(rules.group(1).split(",")).contains(rule)) {
                    Matcher value = Pattern.compile("(?:^|;)" + property + ":[^;#]*(#[0-9a-f]{3,6})")
                            .matcher(rules.group(2));
                    if (value.find()) found.put(rule, value.group(1));
                }
        }
        assertThat(found).as(rule + " " + property).containsKey(rule);
        return found.get(rule);
    }

    private static double luminance(String colour) {
        String hex = colour.length() == 4 ? colour.substring(1).replaceAll("(.)", "$1$1") : colour.substring(1);
        double[] weights = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            double share = Integer.parseInt(hex.substring(2 * i, 2 * i + 2), 16) / 255.0;
            sum += weights[i] * (share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4));
        }
        return sum;
    }

    private static double contrast(String one, String other) {
        double a = luminance(one) + 0.05;
        double b = luminance(other) + 0.05;
        return Math.max(a, b) / Math.min(a, b);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void every_text_stands_out_from_what_it_stands_on(boolean dark) {
        String text = colour(dark, "body", "color");
        assertThat(contrast("#000", "#fff")).isEqualTo(21);
        for (String ground : List.of("body", ".lead", ".lead.bad"))
            assertThat(contrast(text, colour(dark, ground, "background")))
                    .as(ground)
                    .isGreaterThanOrEqualTo(4.5);
        assertThat(contrast(colour(dark, "footer", "color"), colour(dark, "body", "background")))
                .isGreaterThanOrEqualTo(4.5);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void the_bar_beside_the_verdict_stands_out_on_both_sides(boolean dark) {
        String good = dark ? colour(true, ".lead", "border-left-color") : colour(false, ".lead", "border-left");
        String bad = colour(dark, ".lead.bad", "border-left-color");
        String page = colour(dark, "body", "background");
        assertThat(contrast(good, page)).isGreaterThanOrEqualTo(3);
        assertThat(contrast(good, colour(dark, ".lead", "background"))).isGreaterThanOrEqualTo(3);
        assertThat(contrast(bad, page)).isGreaterThanOrEqualTo(3);
        assertThat(contrast(bad, colour(dark, ".lead.bad", "background"))).isGreaterThanOrEqualTo(3);
        assertThat(contrast(colour(dark, ".notice", dark ? "border-color" : "border"), page))
                .isGreaterThanOrEqualTo(3);
    }
}
