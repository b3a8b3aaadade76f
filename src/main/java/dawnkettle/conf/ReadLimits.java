package dawnkettle.conf;

import dawnkettle.measure.Celsius;
import dawnkettle.shop.Limits;
import java.util.function.Function;

/** Reads the limits of a recipe; what is not written is the careful default, and cooling never becomes looser than that. */
final class ReadLimits {
    private static final Limits.Cooling CODE = Limits.Cooling.FOOD_CODE;

    private ReadLimits() {}

    static Limits read(Section from) {
        Limits usual = Limits.CAREFUL;
        Limits read = new Limits(
                or(from, "cook_c", usual.cook(), cell -> cell.celsius(60, 125)),
                or(from, "cook_minutes", usual.cookMinutes(), cell -> cell.whole(0, 240)),
                new Limits.Cooling(
                        coolest(from, "warm_c", CODE.warm()),
                        soonest(from, "warm_minutes", CODE.warmMinutes()),
                        coolest(from, "cold_c", CODE.cold()),
                        soonest(from, "cold_minutes", CODE.coldMinutes())));
        from.noMore();
        return read;
    }

    private static <T> T or(Section from, String key, T usual, Function<Written, T> read) {
        return from.find(key).map(read).orElse(usual);
    }

    private static Celsius coolest(Section from, String key, Celsius most) {
        return or(from, key, most, cell -> cell.celsius(0, (int) most.degrees()));
    }

    private static int soonest(Section from, String key, int most) {
        return or(from, key, most, cell -> cell.whole(1, most));
    }
}
