package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Step;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/** A batch while the plan is being made. */
final class Brew {
    final String name;
    final Recipe recipe;
    /** Dry beans, or the mass of what it is made from. */
    final Mass size;

    final Map<Product, Integer> packs = new LinkedHashMap<>();
    final List<Feeding> feeds = new ArrayList<>();
    final List<Brew> parents = new ArrayList<>();
    final Set<String> dues = new TreeSet<>();
    final List<TubDraft.Share> soaks = new ArrayList<>();
    private final Mass expected;
    private final boolean kept;
    private Mass room;
    private OptionalInt stepsDone = OptionalInt.empty();

    /** Mass that goes into another batch. */
    record Feeding(Brew child, Mass mass) {}

    Brew(String name, Recipe recipe, Mass size) {
        this.name = name;
        this.recipe = recipe;
        this.size = size;
        this.expected = expected(recipe, size);
        this.room = usable(recipe, size);
        this.kept = false;
    }

    /** A batch of the plan before, with the mass that was expected of it then. */
    Brew(PlannedBatch before, Recipe recipe, Mass size) {
        this.name = before.id();
        this.recipe = recipe;
        this.size = size;
        this.expected = before.expected();
        this.room = wholeGrams(expected.times(recipe.yield().trim().rest(), RoundingMode.DOWN));
        this.kept = true;
    }

    /** Whether it stood in the plan before: it keeps its beans, its tub and its lot. */
    boolean isKept() {
        return kept;
    }

    /** Nothing of it can be used any more; so many of its steps were begun before that was known. */
    void lose(int steps) {
        stepsDone = OptionalInt.of(steps);
        room = Mass.ZERO;
    }

    boolean isLost() {
        return stepsDone.isPresent();
    }

    /** Its recipe's steps; of a lost batch those that were begun. */
    List<Step> steps() {
        return recipe.steps().subList(0, stepsDone.orElse(recipe.steps().size()));
    }

    boolean isSoaked() {
        return recipe.soakGroup().isPresent();
    }

    Mass expected() {
        return expected;
    }

    Mass room() {
        return room;
    }

    /** Fills as many of {@code wanted} packs as there is room for, and says how many. */
    int fill(Product product, int wanted) {
        int fits = (int) Math.min(wanted, room.dividedBy(product.net()));
        if (fits == 0) return 0;
        packs.merge(product, fits, Integer::sum);
        room = room.minus(product.net().times(fits));
        return fits;
    }

    /** Takes packs out again. */
    void empty(Product product, int fewer) {
        packs.merge(product, -fewer, Integer::sum);
        room = room.plus(product.net().times(fewer));
    }

    /** Gives as much of {@code wanted} as there is room for to {@code child}, and says how much. */
    Mass feed(Brew child, Mass wanted) {
        Mass given = Mass.min(wanted, room);
        if (given.isZero()) return given;
        feeds.add(new Feeding(child, given));
        child.parents.add(this);
        dues.addAll(child.dues);
        room = room.minus(given);
        return given;
    }

    /** Whether a batch made from others gets all that it is sized for. */
    boolean isFedWhole() {
        if (isSoaked()) return true;
        Mass fed = Mass.sum(parents.stream()
                .distinct()
                .flatMap(parent -> parent.feeds.stream())
                .filter(feeding -> feeding.child() == this)
                .map(Feeding::mass)
                .toList());
        return fed.equals(size);
    }

    /** Trim loss and what is too little for another pack. */
    Mass trim() {
        Mass out = Mass.ZERO;
        for (var filled : packs.entrySet()) out = out.plus(filled.getKey().net().times(filled.getValue()));
        for (Feeding feeding : feeds) out = out.plus(feeding.mass());
        return expected().minus(out);
    }

    /** Mass of product before trimming, in whole grams. */
    static Mass expected(Recipe recipe, Mass size) {
        return wholeGrams(size.times(recipe.yield().mean(), RoundingMode.DOWN));
    }

    /** Mass of product that can be packed or passed on, in whole grams. */
    static Mass usable(Recipe recipe, Mass size) {
        return wholeGrams(expected(recipe, size).times(recipe.yield().trim().rest(), RoundingMode.DOWN));
    }

    private static Mass wholeGrams(Mass mass) {
        return Mass.grams(mass.inGrams(RoundingMode.DOWN));
    }
}
