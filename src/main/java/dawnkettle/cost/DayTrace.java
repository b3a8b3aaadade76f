package dawnkettle.cost;

import dawnkettle.cost.MadeDay.Bill;
import dawnkettle.cost.MadeDay.Made;
import dawnkettle.cost.MadeDay.Used;
import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedBatch.Feed;
import dawnkettle.plan.PlannedBatch.Filled;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.shop.Ingredient;
import dawnkettle.shop.Material;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Follows beans, work and materials from the batches into the packs. Trim is borne by what is packed. */
final class DayTrace {
    /** Rapeseed and soybean oil weigh about 0.92 kg a litre at room temperature (from memory). */
    private static final BigDecimal KILOGRAMS_A_LITRE_OF_OIL = new BigDecimal("0.92");

    private static final int HALVES = 2;

    private final DayPlan plan;
    private final Shop shop;
    private final BeanPrices prices;
    private final Map<String, List<Contents>> shares = new HashMap<>();

    DayTrace(DayPlan plan, Shop shop, BeanPrices prices) {
        this.plan = plan;
        this.shop = shop;
        this.prices = prices;
    }

    List<Made> made() {
        Map<String, Contents> contents = new TreeMap<>();
        Map<String, Long> packs = new TreeMap<>();
        Contents lost = Contents.ofBeans(leftOver());
        for (PlannedBatch batch : plan.batches()) {
            if (outputs(batch).isEmpty()) lost = lost.plus(contentsOf(batch));
            for (int i = 0; i < batch.packs().size(); i++) {
                Filled filled = batch.packs().get(i);
                contents.merge(filled.product(), sharesOf(batch).get(i), Contents::plus);
                packs.merge(filled.product(), (long) filled.packs(), Long::sum);
            }
        }
        return rows(contents, packs, lost);
    }

    /** Soaked beans that no batch takes are paid for all the same, and borne by what is made. */
    private Map<String, Mass> leftOver() {
        Map<String, Mass> left = new TreeMap<>();
        for (PlannedSoak soak : plan.soaks()) left.merge(soak.soakGroup(), soak.leftOver(), Mass::plus);
        return left;
    }

    private List<Made> rows(Map<String, Contents> contents, Map<String, Long> packs, Contents lost) {
        List<Mass> masses = contents.keySet().stream()
                .map(product -> net(product, packs.get(product)))
                .toList();
        List<Contents> losses = masses.isEmpty() ? List.of() : lost.over(masses);
        List<Made> rows = new ArrayList<>();
        for (Map.Entry<String, Contents> product : contents.entrySet()) {
            int i = rows.size();
            Contents all = product.getValue().plus(losses.get(i));
            rows.add(row(shop, product.getKey(), packs.get(product.getKey()), all, prices));
        }
        return rows;
    }

    static Made row(Shop shop, String product, long packs, Contents all, BeanPrices prices) {
        List<Used> used = Stream.concat(
                        all.used().entrySet().stream()
                                .map(one -> new Used(one.getKey(), units(shop.material(one.getKey()), one.getValue()))),
                        Packaging.of(shop, product, packs).stream())
                .toList();
        return new Made(
                product,
                packs,
                shop.product(product).net().times(packs),
                all.allBeans(),
                all.handSeconds(),
                used,
                new Bill(Optional.of(prices.minorOf(all.beans())), OptionalLong.of(all.kilojoules())));
    }

    /** In the material's own unit. */
    static BigDecimal units(Material material, Mass mass) {
        BigDecimal kilograms = mass.inKilograms(6, RoundingMode.UNNECESSARY);
        boolean oilByLitre = material.unit() == Material.Unit.LITRE && material.kind() == Material.Kind.OIL;
        return oilByLitre ? kilograms.divide(KILOGRAMS_A_LITRE_OF_OIL, 6, RoundingMode.HALF_UP) : kilograms;
    }

    private Mass net(String product, long packs) {
        return shop.product(product).net().times(packs);
    }

    private List<Mass> outputs(PlannedBatch batch) {
        List<Mass> outputs = new ArrayList<>();
        for (Filled filled : batch.packs()) outputs.add(net(filled.product(), filled.packs()));
        for (Feed feed : batch.feeds()) outputs.add(feed.mass());
        return outputs;
    }

    /** What each pack kind and then each feed of a batch carries, in their order. */
    private List<Contents> sharesOf(PlannedBatch batch) {
        List<Contents> known = shares.get(batch.id());
        if (known != null) return known;
        List<Contents> made = contentsOf(batch).over(outputs(batch));
        shares.put(batch.id(), made);
        return made;
    }

    private Contents contentsOf(PlannedBatch batch) {
        Contents all = new Contents(beans(batch), handSeconds(batch), heat(batch), added(batch));
        for (PlannedBatch parent : plan.batches())
            for (int i = 0; i < parent.feeds().size(); i++)
                if (parent.feeds().get(i).batch().equals(batch.id()))
                    all = all.plus(sharesOf(parent).get(parent.packs().size() + i));
        return all;
    }

    private Map<String, Mass> beans(PlannedBatch batch) {
        return shop.recipe(batch.recipe())
                .soakGroup()
                .map(group -> Map.of(group, batch.beans()))
                .orElse(Map.of());
    }

    private long heat(PlannedBatch batch) {
        Recipe recipe = shop.recipe(batch.recipe());
        if (recipe.soakGroup().isPresent())
            return Heat.boiling(
                    recipe,
                    batch.beans(),
                    shop.climate().tap(plan.heading().productionDate().getMonth()));
        Mass input = Mass.sum(plan.batches().stream()
                .flatMap(parent -> parent.feeds().stream())
                .filter(feed -> feed.batch().equals(batch.id()))
                .map(Feed::mass)
                .toList());
        return Heat.frying(shop, recipe, input, batch.expected());
    }

    private Map<String, Mass> added(PlannedBatch batch) {
        Map<String, Mass> added = new TreeMap<>();
        batch.coagulant().ifPresent(dose -> added.put(dose.material(), dose.mass()));
        for (Ingredient ingredient : shop.recipe(batch.recipe()).ingredients())
            added.merge(
                    ingredient.material(),
                    batch.expected().times(ingredient.perProduct(), RoundingMode.HALF_UP),
                    Mass::plus);
        return added;
    }

    private long handSeconds(PlannedBatch batch) {
        long halves = 0;
        for (PlannedOperation step : plan.operationsOf(batch.id()))
            halves += Duration.between(step.start(), step.end()).toSeconds() * step.halfHands();
        return halves / HALVES;
    }
}
