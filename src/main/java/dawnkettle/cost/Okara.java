package dawnkettle.cost;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** What is left of the beans when the milk is drawn off, by the mass balance of their solids. */
public final class Okara {
    /** Solids of dry beans: 100 % less 8.54 % water (USDA SR, raw soybeans, NDB 16108). */
    private static final Share SOLIDS = Share.of("0.9146");

    /** Share of the beans' solids that stays in the okara (Wang and Cavins 1989). */
    private static final Share KEPT = Share.percent(30);

    /** Moisture of okara from an ordinary press, inside the published 75 to 82 %. */
    private static final Share MOISTURE = Share.percent(80);

    /** How the figure comes about, for whoever reads it. */
    public static final String BASIS =
            "1.37 kg a kg at 80 % moisture, from 30 % of the beans' solids (Wang and Cavins 1989)";

    /** How long it keeps: 12 h at 30 °C (Azanza and Gascon 2015, Philipp. J. Sci. 144(2)). */
    public static final String CAUTION = "It spoils fast: at most 12 h at 30 °C (86 °F) (Azanza and Gascon 2015). "
            + "Keep it at or below 5 °C (41 °F), covered, until it is fetched; it is soy, and wet.";

    private Okara() {}

    public static Mass expected(Mass beans) {
        return expected(beans, MOISTURE);
    }

    /** @param moisture of the okara, below one */
    public static Mass expected(Mass beans, Share moisture) {
        BigDecimal solids = BigDecimal.valueOf(beans.milligrams())
                .multiply(SOLIDS.asDecimal())
                .multiply(KEPT.asDecimal());
        return Mass.milligrams(solids.divide(moisture.rest().asDecimal(), 0, RoundingMode.HALF_UP)
                .longValueExact());
    }
}
