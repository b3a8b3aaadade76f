package dawnkettle.plan;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
import dawnkettle.shop.Recipe;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Where the solids of the beans go: into tofu, okara, and soak water with whey. The partition is that of Wang and Cavins
 * 1989, Cereal Chem. 66(5):359-361: tofu 52 %, okara 30 %, soak water and whey 14 %, which leaves 4 % lost and named.
 */
public final class MassBalance {
    /** Water of raw soybeans, USDA SR 16108. */
    public static final Share WATER_OF_BEANS = Share.of("0.0854");

    public static final Share SOLIDS_TO_TOFU = Share.percent(52);
    public static final Share SOLIDS_TO_OKARA = Share.percent(30);
    public static final Share SOLIDS_TO_WHEY = Share.percent(14);

    /** Of the beans' protein, 71 % is in the tofu (same source). */
    public static final Share PROTEIN_TO_TOFU = Share.percent(71);

    /** Water of hand-pressed okara: 80 % (published 75 to 84 %). */
    public static final Share WATER_OF_OKARA = Share.percent(80);

    /** Water that beans bring from the soak: the uptake at which {@link SoakLaw#DEFAULT} calls them ready. */
    private static final Share TAKEN_UP = Share.of("1.15");

    private MassBalance() {}

    /** Of the solids, in the milk that is drawn off (same source); what is not in the tofu of it goes with the whey. */
    public static final Share SOLIDS_TO_MILK = Share.percent(63);

    /** Of the solids, in the soak water: what the same source has for soak water and whey, less the milk's that is no tofu. */
    static final Share SOLIDS_LEACHED = Share.percent(14 - (63 - 52));

    /** What is left over of the solids when tofu, okara, soak water and whey are counted: lost in handling. */
    public static Share lost() {
        return Share.millionths(Share.WHOLE.millionths()
                - SOLIDS_TO_TOFU.millionths()
                - SOLIDS_TO_OKARA.millionths()
                - SOLIDS_TO_WHEY.millionths());
    }

    /** Mass of tofu with {@code water} in it per mass of beans. */
    public static BigDecimal tofuPerBeans(Share water) {
        return perBeans(SOLIDS_TO_TOFU, water);
    }

    /** Mass of okara with {@code water} in it per mass of beans. */
    public static BigDecimal okaraPerBeans(Share water) {
        return perBeans(SOLIDS_TO_OKARA, water);
    }

    private static BigDecimal perBeans(Share solids, Share water) {
        return WATER_OF_BEANS
                .rest()
                .asDecimal()
                .multiply(solids.asDecimal())
                .divide(water.rest().asDecimal(), MathContext.DECIMAL32);
    }

    /** Protein of a tofu with {@code water} in it, as a share, from beans with {@code proteinOfBeans}. */
    public static BigDecimal proteinOfTofu(Share proteinOfBeans, Share water) {
        return proteinOfBeans
                .asDecimal()
                .multiply(PROTEIN_TO_TOFU.asDecimal())
                .divide(tofuPerBeans(water), MathContext.DECIMAL32);
    }

    /** Wet okara that {@code beans} leave. */
    public static Mass okara(Mass beans) {
        return Mass.grams(BigDecimal.valueOf(beans.inGrams(RoundingMode.DOWN))
                .multiply(okaraPerBeans(WATER_OF_OKARA))
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact());
    }

    /**
     * Milk from {@code beans} that were soaked and then ground with {@code water}: all that is ground, less the okara.
     * The water counts the steam that is blown in; evaporation is left out.
     */
    public static Mass milk(Mass beans, Mass water) {
        Mass takenUp = beans.times(TAKEN_UP, RoundingMode.HALF_UP);
        return beans.plus(takenUp).plus(water).minusOrZero(okara(beans));
    }

    /** Water that soaked beans bring along. */
    static Mass takenUp(Mass beans) {
        return beans.times(TAKEN_UP, RoundingMode.HALF_UP);
    }

    /** MJ that bring a batch's slurry from the tap's temperature to the boil. */
    static double megajoules(Recipe recipe, Mass beans, Celsius tap) {
        Mass ground = beans.times(recipe.water(), RoundingMode.HALF_UP);
        double kilograms = inKilograms(beans.plus(takenUp(beans)).plus(ground));
        if (kilograms == 0) return 0;
        double solids = inKilograms(beans.times(WATER_OF_BEANS.rest(), RoundingMode.HALF_UP)) / kilograms;
        return KettleHeat.megajoules(kilograms, 1 - solids, tap.degrees(), KettleHeat.BOILING);
    }

    /**
     * Water that direct steam leaves in the kettle, in whole grams: it is part of the recipe's water, and so much less goes
     * to the mill. Nothing where the kettle is heated through its wall.
     */
    static Mass steam(Recipe recipe, Mass beans, Celsius tap) {
        if (!recipe.kettle().directSteam()) return Mass.ZERO;
        double slurry = inKilograms(beans.plus(takenUp(beans)).plus(beans.times(recipe.water(), RoundingMode.HALF_UP)));
        if (slurry == 0) return Mass.ZERO;
        double share = KettleHeat.steam(megajoules(recipe, beans, tap)) / slurry; // of what there is before the steam
        return Mass.grams(Math.round(1000 * slurry * share / (1 + share)));
    }

    private static double inKilograms(Mass mass) {
        return mass.milligrams() / 1e6;
    }
}
