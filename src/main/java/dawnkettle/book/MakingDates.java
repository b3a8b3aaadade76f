package dawnkettle.book;

import dawnkettle.shop.Product;
import dawnkettle.shop.Route;
import dawnkettle.shop.ShopCalendar;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * On which day something is made so that a van can carry it on the day of delivery.
 *
 * <p>It is the latest work day on which the van can still have it (the day itself where the route carries the day's own
 * making, otherwise a day before), less the product's lead in work days. So Saturday makes for Monday's early vans, and
 * what a closed day would have made is made on the work day before. A closed day stops the making; the vans run as their
 * route says, unless the calendar keeps them in too.
 */
public record MakingDates(ShopCalendar calendar) {
    /** The making date; empty where it cannot be had that day, for which {@link #whyNot} has the words. */
    public Optional<LocalDate> makingDate(LocalDate delivery, Route route, Product product) {
        return whyNot(delivery, route, product).isPresent()
                ? Optional.empty()
                : Optional.of(latestDay(delivery, route, product));
    }

    /** The delivery dates that are made on {@code productionDate}, in their order. */
    public List<LocalDate> deliveryDates(LocalDate productionDate, Route route, Product product) {
        List<LocalDate> dates = new ArrayList<>();
        LocalDate delivery = productionDate;
        while (true) {
            LocalDate made = latestDay(delivery, route, product);
            if (made.isAfter(productionDate)) return dates;
            if (made.equals(productionDate) && whyNot(delivery, route, product).isEmpty()) dates.add(delivery);
            delivery = delivery.plusDays(1);
        }
    }

    /** Why it cannot be delivered that day; empty where it can. */
    public Optional<String> whyNot(LocalDate delivery, Route route, Product product) {
        if (!route.days().contains(delivery.getDayOfWeek()))
            return Optional.of("%s %s is not a delivery day of route \"%s\""
                    .formatted(word(delivery.getDayOfWeek()), delivery, route.code()));
        if (calendar.withoutVans().contains(delivery))
            return Optional.of("no van runs on %s %s (%s)"
                    .formatted(
                            word(delivery.getDayOfWeek()),
                            delivery,
                            calendar.closed().getOrDefault(delivery, "closed")));
        LocalDate made = latestDay(delivery, route, product);
        long left = ChronoUnit.DAYS.between(delivery, product.keeping().bestBefore(made));
        int least = product.keeping().leastDaysLeft();
        if (left >= least) return Optional.empty();
        return Optional.of("\"%s\" made on %s has too few days left on %s: %d of the %d it needs"
                .formatted(product.code(), made, delivery, left, least));
    }

    /** The first day from {@code from} on, within four weeks, on which it can be delivered. */
    public Optional<LocalDate> firstFrom(LocalDate from, Route route, Product product) {
        return from.datesUntil(from.plusWeeks(4))
                .filter(day -> whyNot(day, route, product).isEmpty())
                .findFirst();
    }

    private LocalDate latestDay(LocalDate delivery, Route route, Product product) {
        LocalDate day = route.madeSameDay() ? calendar.onOrBefore(delivery) : calendar.previous(delivery);
        for (int lead = product.leadDays(); lead > 0; lead--) day = calendar.previous(day);
        return day;
    }

    private static String word(DayOfWeek day) {
        return day.name().charAt(0) + day.name().substring(1).toLowerCase(java.util.Locale.ROOT);
    }
}
