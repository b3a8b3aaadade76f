package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
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
     * Steam and evaporation are left out.
     */
    public static Mass milk(Mass beans, Mass water) {
        Mass takenUp = beans.times(TAKEN_UP, RoundingMode.HALF_UP);
        return beans.plus(takenUp).plus(water).minusOrZero(okara(beans));
    }
}
