package dawnkettle.export;

import dawnkettle.measure.Mass;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedBatch.Dose;
import dawnkettle.plan.PlannedBatch.Feed;
import dawnkettle.plan.PlannedBatch.Filled;
import dawnkettle.plan.PlannedBatch.FromTub;
import dawnkettle.shop.Shop;
import dawnkettle.stock.LotCode;
import java.math.RoundingMode;

/** One batch as a row of the open form. */
final class BatchForm {
    private BatchForm() {}

    static Row write(PlannedBatch batch, Shop shop) {
        return new Row()
                .text("id", batch.id())
                .text("lot", batch.lot().text())
                .text("recipe", batch.recipe())
                .grams("beansGrams", batch.beans())
                .grams("waterGrams", batch.water())
                .object("coagulant", batch.coagulant(), BatchForm::write)
                .grams("expectedGrams", batch.expected())
                .list(
                        "soaks",
                        batch.soaks(),
                        soak -> new Row().text("tub", soak.tub()).grams("grams", soak.beans()))
                .texts("materialLots", batch.materialLots())
                .list("packs", batch.packs(), BatchForm::write)
                .whole("trimGrams", trimGrams(batch, shop))
                .date("packDate", batch.packDate())
                .list(
                        "feeds",
                        batch.feeds(),
                        feed -> new Row().text("batch", feed.batch()).grams("grams", feed.mass()));
    }

    /** What is left in whole grams after packs and feeds, so that the written row closes as the exact batch does. */
    private static long trimGrams(PlannedBatch batch, Shop shop) {
        Mass packed = Mass.sum(batch.packs().stream()
                .map(filled -> shop.product(filled.product()).net().times(filled.packs()))
                .toList());
        long fed =
                batch.feeds().stream().mapToLong(feed -> rounded(feed.mass())).sum();
        return rounded(batch.expected()) - rounded(packed) - fed;
    }

    private static long rounded(Mass mass) {
        return mass.inGrams(RoundingMode.HALF_UP);
    }

    private static Row write(Dose dose) {
        return new Row().text("name", dose.material()).grams("grams", dose.mass());
    }

    private static Row write(Filled filled) {
        return new Row()
                .text("product", filled.product())
                .whole("packs", filled.packs())
                .whole("cases", filled.cases())
                .whole("loosePacks", filled.loosePacks());
    }

    static PlannedBatch read(Fields fields) {
        return new PlannedBatch(
                fields.text("id"),
                fields.word("lot", LotCode::new),
                fields.text("recipe"),
                fields.grams("beansGrams"),
                fields.grams("waterGrams"),
                fields.find("coagulant", dose -> new Dose(dose.text("name"), dose.grams("grams"))),
                fields.grams("expectedGrams"),
                fields.list("soaks", soak -> new FromTub(soak.text("tub"), soak.grams("grams"))),
                fields.texts("materialLots"),
                fields.list("packs", BatchForm::readFilled),
                fields.grams("trimGrams"),
                fields.date("packDate"),
                fields.list("feeds", feed -> new Feed(feed.text("batch"), feed.grams("grams"))));
    }

    private static Filled readFilled(Fields fields) {
        return new Filled(
                fields.text("product"), fields.count("packs"), fields.count("cases"), fields.count("loosePacks"));
    }
}
