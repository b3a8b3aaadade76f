package dawnkettle.label;

import dawnkettle.plan.PlannedLabel;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.House;
import dawnkettle.shop.Keeping;
import dawnkettle.shop.Packing;
import dawnkettle.shop.Product;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Fills case labels from what was planned, for one house and its market. */
public final class CaseLabels {
    /** A sealed pack that was not pasteurised keeps at most ten days, whatever was written (the shop's own rule). */
    private static final int MOST_DAYS_SEALED_RAW = 10;

    private final House house;
    private final MarketWording wording;

    public CaseLabels(House house) {
        this.house = house;
        this.wording = MarketWording.of(house.market());
    }

    public MarketWording wording() {
        return wording;
    }

    /** The label of a whole case. @throws BadFile where a date may not be printed */
    public CaseLabel wholeCase(PlannedLabel planned, Product product) {
        return label(planned, product, planned.packsInCase());
    }

    /**
     * The label of a case of {@code packs} only, in words alone: (01) would name the whole case, whose content is another;
     * (37) says how many of an item are inside, but only beside (02) and on a logistic unit (00) (GS1 syntax dictionary,
     * requisites of 02 and 37, as {@link Identifier} has them); and (10), (15) and (17) may not stand without one of these.
     *
     * @throws BadFile where a date may not be printed
     */
    public CaseLabel partCase(PlannedLabel planned, Product product, int packs) {
        return label(planned, product, packs);
    }

    private CaseLabel label(PlannedLabel planned, Product product, int packs) {
        List<Problem> objections = objections(planned, product);
        if (!objections.isEmpty()) throw new BadFile(objections);
        ElementString elements = ElementString.read(planned.elementString());
        return new CaseLabel(
                product.name(),
                dated(planned, elements),
                holds(product.packing(), packs, planned.packsInCase()),
                says(product),
                packs == planned.packsInCase() && elements.value("01").isPresent()
                        ? Optional.of(elements)
                        : Optional.empty());
    }

    /** Why no label may be printed; empty where one may. */
    public List<Problem> objections(PlannedLabel planned, Product product) {
        List<Problem> objections = new ArrayList<>();
        Keeping keeping = product.keeping();
        Place place = Place.of("products.csv");
        String subject = "lot " + planned.lot() + " of \"" + product.code() + "\": ";
        long days = ChronoUnit.DAYS.between(planned.packDate(), planned.bestBefore());
        if (days > keeping.shelfLifeDays())
            objections.add(new Problem(
                    place,
                    subject + "date \"" + planned.bestBefore() + "\" is " + days + " days after packing",
                    "the validated life is " + keeping.shelfLifeDays() + " days; nothing lengthens it"));
        if (keeping.sealing().isSealed() && !keeping.pasteurised() && days > MOST_DAYS_SEALED_RAW)
            objections.add(new Problem(
                    place,
                    subject + "a sealed pack not pasteurised is dated \"" + days + "\" days ahead",
                    "give it at most " + MOST_DAYS_SEALED_RAW + " days, or pasteurise it"));
        if (product.wording().storage().isBlank())
            objections.add(new Problem(place, subject + "there is no storage line", "write how it is kept cold"));
        objections.addAll(elementObjections(planned, subject));
        return objections;
    }

    private static List<Problem> elementObjections(PlannedLabel planned, String subject) {
        List<Problem> objections = new ArrayList<>();
        Place place = Place.of("products.csv");
        try {
            ElementString elements = ElementString.read(planned.elementString());
            if (elements.value("01").isPresent())
                for (String complaint : elements.complaints())
                    objections.add(new Problem(place, subject + "its symbol is not whole", complaint));
            String coded = elements.value("15").or(() -> elements.value("17")).orElse("");
            if (!coded.isEmpty() && !coded.equals(Gs1Date.write(planned.bestBefore())))
                objections.add(new Problem(
                        place,
                        subject + "its symbol says \"" + coded + "\", its text " + planned.bestBefore(),
                        "both must be the same day"));
            if (!elements.value("10").orElse("").equals(planned.lot().text()))
                objections.add(
                        new Problem(place, subject + "its symbol names another lot", "both must be the same lot"));
        } catch (IllegalArgumentException e) {
            objections.add(new Problem(place, subject + e.getMessage(), "correct the case number"));
        }
        return objections;
    }

    private CaseLabel.Dated dated(PlannedLabel planned, ElementString elements) {
        MarketWording.DateWords words = wording.words();
        String word = elements.value("17").isPresent() ? words.safety() : words.quality();
        return new CaseLabel.Dated(
                planned.lot().text(), wording.date(planned.packDate()), word, wording.date(planned.bestBefore()));
    }

    private CaseLabel.Holds holds(Packing packing, int packs, int packsInCase) {
        boolean usFirst = wording.type().usUnitsFirst();
        String each = packing.volume()
                .map(volume -> NetQuantity.of(volume, usFirst))
                .orElseGet(() -> NetQuantity.of(packing.net(), usFirst));
        String net = packing.volume()
                .map(volume -> NetQuantity.of(volume.times(packs), usFirst))
                .orElseGet(() -> NetQuantity.of(packing.net().times(packs), usFirst));
        return new CaseLabel.Holds(packs, packsInCase, each, net);
    }

    private CaseLabel.Says says(Product product) {
        List<Allergen> allergens = product.wording().contains();
        String ingredients = product.wording().ingredients();
        return new CaseLabel.Says(
                wording.type().allergensInCapitals() ? inCapitals(ingredients, allergens) : ingredients,
                allergens.stream().map(CaseLabels::named).collect(Collectors.joining(", ")),
                product.wording().storage(),
                house.name(),
                String.join(", ", house.address()));
    }

    private static String named(Allergen allergen) {
        return allergen.word().toUpperCase(Locale.ROOT);
    }

    /** A one-colour head has no other type to set allergens apart with (Regulation (EU) 1169/2011 article 21). */
    static String inCapitals(String ingredients, List<Allergen> allergens) {
        String text = ingredients;
        for (Allergen allergen : allergens) {
            String stem = allergen.word().replaceAll("s$", "");
            text = Pattern.compile("\\b" + Pattern.quote(stem) + "[a-z]*", Pattern.CASE_INSENSITIVE)
                    .matcher(text)
                    .replaceAll(found -> found.group().toUpperCase(Locale.ROOT));
        }
        return text;
    }

    /** The latest day that may be printed on packs of {@code packDate}. */
    public static LocalDate latest(LocalDate packDate, Keeping keeping) {
        boolean capped = keeping.sealing().isSealed() && !keeping.pasteurised();
        int days = capped ? Math.min(MOST_DAYS_SEALED_RAW, keeping.shelfLifeDays()) : keeping.shelfLifeDays();
        return packDate.plusDays(days);
    }
}
