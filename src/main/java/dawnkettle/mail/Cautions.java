package dawnkettle.mail;

import dawnkettle.plan.DayPlan;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.util.ArrayList;
import java.util.List;

/** The cautions under every summary of a making day. They defer to the shop's validated figures and to local codes. */
final class Cautions {
    private Cautions() {}

    static List<String> of(DayPlan plan, Shop shop) {
        List<String> all = new ArrayList<>();
        all.add(
                "This is a plan: it switches nothing and measures nothing. Your food-safety plan and local codes come first.");
        all.add("Dates follow the shelf life that you validated; nothing here lengthens one. When in doubt, shorten.");
        if (makesSealed(plan, shop))
            all.add("Sealed packs: no air means that botulism can grow before it can be smelt. "
                    + "Keep them at or below 5 °C (41 °F) and within their validated life; never at room temperature.");
        all.add(
                "Cooling: the clock starts when the block leaves the press. A lot that was not cold in time is not sold.");
        all.add("Soy is an allergen in everything here, okara and whey too. Change over as the run sheet says.");
        all.add(hazards(plan, shop));
        return all;
    }

    private static boolean makesSealed(DayPlan plan, Shop shop) {
        return plan.batches().stream()
                .flatMap(batch -> batch.packs().stream())
                .flatMap(filled -> shop.findProduct(filled.product()).stream())
                .anyMatch(product -> product.keeping().sealing().isSealed());
    }

    private static String hazards(DayPlan plan, Shop shop) {
        boolean fries = plan.batches().stream()
                .map(batch -> shop.recipe(batch.recipe()))
                .map(Recipe::steps)
                .flatMap(List::stream)
                .anyMatch(step -> step.stage().contains("fry"));
        return "Milk near the boil foams over and scalds; keep hands out of the press; lift sacks and buckets by two."
                + (fries ? " Fryer: dry pieces only, never water into hot oil, never leave it." : "");
    }
}
