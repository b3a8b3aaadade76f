package dawnkettle.mail;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.House;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.Locale;

/** How days, times, masses and money are written in a mail: in the shop's zone and units, the same on every machine. */
final class Figures {
    private final House house;
    private final LocalDate today;

    /** @param today times of this day stand without their day */
    Figures(House house, LocalDate today) {
        this.house = house;
        this.today = today;
    }

    /** As "Fri 4 Dec". */
    static String day(LocalDate day) {
        return word(day.getDayOfWeek().name()) + " " + date(day);
    }

    /** As "4 Dec". */
    static String date(LocalDate day) {
        return day.getDayOfMonth() + " " + word(day.getMonth().name());
    }

    private static String word(String name) {
        return name.charAt(0) + name.substring(1, 3).toLowerCase(Locale.ROOT);
    }

    /** As "10:30", or "Thu 22:10" on another day than today. */
    String time(Instant instant) {
        ZonedDateTime local = instant.atZone(house.zone());
        String time = String.format(Locale.ROOT, "%02d:%02d", local.getHour(), local.getMinute());
        if (local.toLocalDate().equals(today)) return time;
        return word(local.getDayOfWeek().name()) + " " + time;
    }

    /** As "35 min", "2 h 05 min" or "18 h". */
    static String minutes(Duration span) {
        long minutes = span.toMinutes();
        if (minutes < 60) return minutes + " min";
        if (minutes >= 4 * 60)
            return minutes / 60 + " h"; // minutes more or less no longer matter, and a phone is narrow
        return String.format(Locale.ROOT, "%d h %02d min", minutes / 60, minutes % 60);
    }

    String massUnit() {
        return isMetric() ? "kg" : "lb";
    }

    /** A figure without its unit, to a tenth. */
    String massFigure(Mass mass) {
        BigDecimal figure =
                isMetric() ? mass.inKilograms(1, RoundingMode.HALF_UP) : mass.inPounds(1, RoundingMode.HALF_UP);
        return figure.toPlainString();
    }

    String mass(Mass mass) {
        return massFigure(mass) + " " + massUnit();
    }

    String temperature(Celsius celsius) {
        if (isMetric()) return celsius.toString();
        return celsius.inFahrenheit(1, RoundingMode.HALF_UP).toPlainString() + " °F";
    }

    static String money(Money money) {
        return money.amount().toPlainString();
    }

    /** "1 pack", "12 packs". */
    static String count(long count, String one, String many) {
        return count + " " + (count == 1 ? one : many);
    }

    private boolean isMetric() {
        return house.units() == House.Units.METRIC;
    }
}
