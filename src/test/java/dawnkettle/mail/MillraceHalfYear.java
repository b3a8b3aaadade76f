package dawnkettle.mail;

import dawnkettle.cost.MadeDay;
import dawnkettle.cost.MadeDay.Made;
import dawnkettle.cost.MadeDay.Used;
import dawnkettle.cost.UnitPrice;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.measure.Share;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** 26 weeks of the Millrace by rule: growth, beans that rise by 40 % over eight weeks, a yield that falls by 4 %. */
public final class MillraceHalfYear {
    static final LocalDate FIRST = LocalDate.of(2026, 6, 1);
    private static final int SHOCK = 14;
    private static final int SHOCK_WEEKS = 8;

    private MillraceHalfYear() {}

    public static List<MadeDay> days() {
        List<MadeDay> days = new ArrayList<>();
        for (int week = 0; week < 26; week++)
            for (int day = 0; day < 6; day++)
                days.add(day(week, FIRST.plusWeeks(week).plusDays(day)));
        return days;
    }

    private static MadeDay day(int week, LocalDate date) {
        long busy = date.getDayOfWeek() == DayOfWeek.FRIDAY ? 120 : 100;
        long scale = busy * (100 + week) / 100;
        long gramsAKilogram = week < 20 ? 2_600 : 2_600 - 104;
        return new MadeDay(
                date,
                List.of(made("FIRM-12", 12 * scale, 350, gramsAKilogram), made("MILK-1", 4 * scale, 1_030, 7_400)),
                new UnitPrice(Millrace.usd("38.50").plus(shock(week)), Mass.kilograms(25)),
                Mass.kilograms(15 * scale),
                5);
    }

    private static Money shock(int week) {
        int steps = Math.max(0, Math.min(SHOCK_WEEKS, week - SHOCK));
        // 40 % of 38.50 is 15.40, in eight equal steps of 1.925, told to the cent.
        return Millrace.usd("15.40").times(Share.millionths(steps * 125_000L), RoundingMode.HALF_UP);
    }

    private static Made made(String product, long packs, int grams, long gramsAKilogram) {
        Mass mass = Mass.grams(packs * grams);
        Mass beans = Mass.grams(packs * grams * 1_000 / gramsAKilogram);
        BigDecimal nigari = new BigDecimal("0.008").multiply(mass.inKilograms(3, RoundingMode.HALF_UP));
        List<Used> used = product.startsWith("MILK") ? List.of() : List.of(new Used("NIGARI", nigari));
        return new Made(product, packs, mass, beans, packs * 45, used);
    }
}
