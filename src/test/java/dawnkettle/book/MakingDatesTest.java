package dawnkettle.book;

import static dawnkettle.book.SmallShop.EARLY;
import static dawnkettle.book.SmallShop.LATE;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.shop.Product;
import dawnkettle.shop.ShopCalendar;
import java.time.LocalDate;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** December 2026 begins on a Tuesday (the JDK's calendar). */
class MakingDatesTest {
    private static final Product FIRM = SmallShop.PRODUCTS.get(0);
    private static final Product SOFT = SmallShop.PRODUCTS.get(1);
    private static final Product FRIED = SmallShop.PRODUCTS.get(2);
    private static final LocalDate FRIDAY = december(4);
    private static final LocalDate SATURDAY = december(5);
    private static final LocalDate MONDAY = december(7);

    private final MakingDates dates = new MakingDates(SmallShop.open().calendar());

    @Test
    void a_late_van_carries_the_days_own_making() {
        assertThat(dates.makingDate(FRIDAY, LATE, FIRM)).contains(FRIDAY);
    }

    @Test
    void an_early_van_carries_what_was_made_the_day_before() {
        assertThat(dates.makingDate(FRIDAY, EARLY, FIRM)).contains(december(3));
    }

    @Test
    void saturday_makes_for_mondays_early_vans() {
        assertThat(dates.makingDate(MONDAY, EARLY, FIRM)).contains(SATURDAY);
        assertThat(dates.deliveryDates(SATURDAY, EARLY, FIRM)).containsExactly(MONDAY);
    }

    @Test
    void a_closed_day_is_made_up_for_on_the_work_day_before() {
        MakingDates closedFriday =
                new MakingDates(SmallShop.closedOn(Map.of(FRIDAY, "inventory")).calendar());

        assertThat(closedFriday.makingDate(FRIDAY, LATE, FIRM)).contains(december(3));
        assertThat(closedFriday.makingDate(SATURDAY, EARLY, FIRM)).contains(december(3));
        assertThat(closedFriday.deliveryDates(december(3), EARLY, FIRM)).containsExactly(FRIDAY, SATURDAY);
        assertThat(closedFriday.deliveryDates(FRIDAY, EARLY, FIRM)).isEmpty();
    }

    @Test
    void a_day_on_which_no_van_runs_is_neither_delivered_nor_made_for() {
        MakingDates noVanOnFriday = new MakingDates(
                new ShopCalendar(SmallShop.open().calendar().workDays(), Map.of(FRIDAY, "inventory"), Set.of(FRIDAY)));

        assertThat(noVanOnFriday.whyNot(FRIDAY, LATE, FIRM)).contains("no van runs on Friday 2026-12-04 (inventory)");
        assertThat(noVanOnFriday.deliveryDates(december(3), EARLY, FIRM)).containsExactly(SATURDAY);
    }

    @Test
    void a_lead_is_counted_in_work_days() {
        assertThat(dates.makingDate(MONDAY, EARLY, FRIED)).contains(FRIDAY);
        assertThat(dates.makingDate(december(8), LATE, FRIED)).contains(MONDAY);
    }

    @Test
    void a_route_delivers_only_on_its_days_and_says_so() {
        assertThat(dates.makingDate(MONDAY, LATE, FIRM)).isEmpty();
        assertThat(dates.whyNot(MONDAY, LATE, FIRM))
                .contains("Monday 2026-12-07 is not a delivery day of route \"late\"");
    }

    @Test
    void what_would_have_too_few_days_left_is_refused_with_the_days() {
        assertThat(dates.makingDate(SATURDAY, EARLY, SOFT)).contains(FRIDAY);
        assertThat(dates.makingDate(MONDAY, EARLY, SOFT)).isEmpty();
        assertThat(dates.whyNot(MONDAY, EARLY, SOFT))
                .contains("\"SOFT-6\" made on 2026-12-05 has too few days left on 2026-12-07: 2 of the 3 it needs");
        assertThat(dates.firstFrom(december(6), EARLY, SOFT)).contains(december(8));
    }

    @Test
    void each_delivery_date_belongs_to_exactly_one_making_date() {
        for (Product product : SmallShop.PRODUCTS)
            for (LocalDate day = december(1); day.isBefore(december(29)); day = day.plusDays(1)) {
                LocalDate delivery = day;
                long owners = december(1)
                        .minusDays(14)
                        .datesUntil(december(31))
                        .filter(dates.calendar()::isWorkDay)
                        .filter(made ->
                                dates.deliveryDates(made, EARLY, product).contains(delivery))
                        .count();
                assertThat(owners)
                        .isEqualTo(dates.makingDate(delivery, EARLY, product).isPresent() ? 1 : 0);
            }
    }

    private static LocalDate december(int day) {
        return LocalDate.of(2026, 12, day);
    }
}
