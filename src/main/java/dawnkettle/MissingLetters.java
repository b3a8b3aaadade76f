package dawnkettle;

import dawnkettle.draw.PdfTypeface;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Finds names that the sheets could only show as boxes, before the night. */
final class MissingLetters {
    private static final String REMEDY =
            "install a typeface that has it, as the package fonts-droid-fallback, and name its"
                    + " file under files of [typefaces] in shop.toml";

    private final PdfTypeface typeface;
    private final List<Problem> problems = new ArrayList<>();

    private MissingLetters(PdfTypeface typeface) {
        this.typeface = typeface;
    }

    static List<Problem> of(Shop shop, PdfTypeface typeface) {
        MissingLetters missing = new MissingLetters(typeface);
        Locale language = Locale.forLanguageTag(shop.house().language());
        missing.look("shop.toml", "language", language.toLanguageTag(), language.getDisplayLanguage(language));
        missing.look("shop.toml", "shop", "name", shop.house().name());
        shop.products().forEach(one -> missing.look("products.csv", "product", one.code(), one.name()));
        shop.recipes().forEach(one -> missing.look("recipes.toml", "recipe", one.code(), one.name()));
        shop.floor().stations().forEach(one -> missing.look("stations.csv", "station", one.code(), one.name()));
        shop.routes().forEach(one -> missing.look("routes.csv", "route", one.code(), one.name()));
        shop.materials().forEach(one -> missing.look("materials.csv", "material", one.code(), one.name()));
        shop.customers().forEach(one -> missing.look("customers.csv", "customer", one.code(), one.name()));
        return missing.problems;
    }

    /** The name itself is not told: it may be a customer's. */
    private void look(String file, String what, String code, String name) {
        typeface.lacking(name)
                .ifPresent(letter -> problems.add(new Problem(
                        Place.of(file),
                        "no typeface has \"" + letter + "\" of the name of " + what + " \"" + code + "\"",
                        REMEDY)));
    }
}
