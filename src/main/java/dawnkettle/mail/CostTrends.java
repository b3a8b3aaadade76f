package dawnkettle.mail;

import dawnkettle.cost.BeanCourse;
import dawnkettle.cost.CostPart;
import dawnkettle.cost.Shift;
import dawnkettle.cost.WeekBook;
import dawnkettle.cost.YieldCourse;
import dawnkettle.measure.Money;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What moved for good over the weeks, in plain words: the price of beans, and yields. */
final class CostTrends {
    private final WeekBook book;
    private final BeanCourse beans;
    private final String currency;

    CostTrends(WeekBook book) {
        this.book = book;
        this.beans = BeanCourse.of(book.weeks());
        this.currency = book.shop().house().currency().getCurrencyCode();
    }

    List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        beanSentence().ifPresent(sentences::add);
        for (YieldCourse course : book.yields()) yieldSentence(course).ifPresent(sentences::add);
        return sentences;
    }

    Optional<String> beanSentence() {
        return beans.shift()
                .map(move -> "Beans cost " + percent(move) + " than before: " + price(move.after())
                        + " " + currency + " a kg, after " + price(move.before())
                        + since(beans.movedIn().orElseThrow(), move)
                        + ".");
    }

    /** Whether beans are dearer for good. */
    boolean areBeansDearer() {
        return beans.shift().filter(move -> move.size() > 0).isPresent();
    }

    /** The Monday from which beans cost another price; only where they do. */
    LocalDate beansMovedIn() {
        return beans.movedIn().orElseThrow();
    }

    /** Minor units a milligram, as whole currency a kilogram. */
    private String price(double minorAMilligram) {
        return BigDecimal.valueOf(minorAMilligram * 1e6)
                .movePointLeft(book.shop().house().currency().getDefaultFractionDigits())
                .setScale(3, RoundingMode.HALF_UP)
                .toPlainString();
    }

    private static String since(LocalDate monday, Shift move) {
        String from = ", from the week of " + Figures.date(monday);
        return move.weeks() == 1 ? from : from + " over " + move.weeks() + " weeks";
    }

    /** As "4.0 % less". */
    private static String percent(Shift move) {
        return String.format(Locale.ROOT, "%.1f %% %s", Math.abs(move.size() * 100), move.size() < 0 ? "less" : "more");
    }

    Optional<String> yieldSentence(YieldCourse course) {
        String name = course.recipe().name();
        if (course.shift().isPresent()) {
            Shift move = course.shift().get();
            return Optional.of(name + " yields " + percent(move)
                    + since(course.movedIn().orElseThrow(), move) + ": " + figure(move.after())
                    + " kg from a kg, after " + figure(move.before()) + worth(course) + ".");
        }
        if (course.alarm().isPresent())
            return Optional.of(name + " yielded " + figure(course.last()) + " kg from a kg last week, usual is "
                    + figure(course.chart().centre()) + " within "
                    + figure(course.chart().lower()) + " to "
                    + figure(course.chart().upper()) + ": "
                    + course.alarm().get().words() + ".");
        if (course.isDrifting())
            return Optional.of(
                    name + " has drifted off its usual " + figure(course.chart().centre())
                            + " kg from a kg over the last weeks, slowly; last week " + figure(course.last()) + ".");
        return Optional.empty();
    }

    /** What it costs in beans; nothing is said of what is made from another recipe. */
    private String worth(YieldCourse course) {
        Shift move = course.shift().orElseThrow();
        if (course.recipe().madeFrom().isPresent() || book.now().all().beans().isZero()) return "";
        double kilograms = course.input() * (1 - move.after() / move.before());
        double each = book.now().all().part(CostPart.BEANS).minor()
                / (double) book.now().all().beans().milligrams()
                * 1e6;
        Money worth = Money.minor(
                Math.round(Math.abs(kilograms * each)), book.shop().house().currency());
        return "; that is " + (kilograms > 0 ? "" : "a saving of ") + Figures.money(worth) + " " + currency
                + " of beans a week";
    }

    private static String figure(double value) {
        return BigDecimal.valueOf(value).setScale(3, RoundingMode.HALF_UP).toPlainString();
    }
}
