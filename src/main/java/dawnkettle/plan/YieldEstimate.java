package dawnkettle.plan;

import dawnkettle.measure.Share;
import dawnkettle.shop.Recipe;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/**
 * What a recipe is counted to give: what the owner wrote down, moved by what its last batches gave.
 *
 * <p>The written yield counts as {@value #PRIOR} batches beside at most the last {@value #MEMORY} recorded ones, so that
 * one odd batch moves little and a change that lasts moves it three quarters of the way. A batch farther off than
 * {@value #SLIP} spreads counts as that far: a slip of the pen is no yield. A move of less than one percent is left, so
 * that plans do not change for nothing; it never moves more than 15 percent. (The five figures: our choice, no source.)
 *
 * @param written the owner's figure
 * @param counted what plans count with
 * @param batches recorded batches behind it
 */
public record YieldEstimate(Recipe recipe, Share written, Share counted, int batches) {
    private static final int PRIOR = 20;
    private static final int MEMORY = 60;
    private static final int SLIP = 4;
    private static final BigDecimal DEAD = new BigDecimal("0.01");
    private static final BigDecimal MOST = new BigDecimal("0.15");
    private static final int PLACES = 3;

    /** @param gave what each recorded batch gave from one of what went in, the oldest first */
    static YieldEstimate of(Recipe recipe, List<BigDecimal> gave) {
        List<BigDecimal> last = gave.subList(Math.max(0, gave.size() - MEMORY), gave.size());
        BigDecimal written = recipe.yield().mean().asDecimal();
        BigDecimal slip = recipe.yield().spread().asDecimal().multiply(BigDecimal.valueOf(SLIP));
        BigDecimal sum = written.multiply(BigDecimal.valueOf(PRIOR));
        for (BigDecimal one : last) sum = sum.add(between(written.subtract(slip), one, written.add(slip)));
        BigDecimal mean = sum.divide(BigDecimal.valueOf(PRIOR + last.size()), PLACES, RoundingMode.HALF_UP);
        BigDecimal off = mean.subtract(written).abs();
        if (off.compareTo(written.multiply(DEAD)) < 0)
            return new YieldEstimate(
                    recipe, recipe.yield().mean(), recipe.yield().mean(), last.size());
        BigDecimal most = written.multiply(MOST);
        BigDecimal held = between(written.subtract(most), mean, written.add(most));
        return new YieldEstimate(
                recipe, recipe.yield().mean(), Share.of(held.setScale(PLACES, RoundingMode.HALF_UP)), last.size());
    }

    private static BigDecimal between(BigDecimal least, BigDecimal value, BigDecimal most) {
        return value.max(least).min(most);
    }

    public boolean isMoved() {
        return !counted.equals(written);
    }

    /** As it stands on the plan. */
    String sentence() {
        return recipe.name() + " is counted with " + counted + " kg a kg, not the " + written
                + " of the recipe: that is what its last " + batches + " recorded batches say.";
    }
}
