package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.floor.Budget;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import dawnkettle.shop.WorkStation;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class GrowthTest {
    private static final List<Integer> PERCENTS = List.of(50, 100, 200, 400);

    private static Growth.Day day(Shop shop, long seed) {
        Evening evening = AnyEvening.of(shop, seed, 0);
        return new Growth.Day(evening.book(), evening.now(), evening.soakRoom().temperatures());
    }

    @Test
    void every_line_grows_and_none_vanishes() {
        Shop shop = AnyShop.of(5);
        ClosedBook book = day(shop, 5).book();
        ClosedBook half = Growth.scaled(book, 50);
        assertThat(half.lines()).hasSameSizeAs(book.lines());
        assertThat(half.lines()).allMatch(line -> line.packs() >= 1);
        assertThat(Growth.scaled(book, 100)).isEqualTo(book);
        assertThat(Growth.scaled(book, 300).packs()).isEqualTo(3 * book.packs());
    }

    /** In shops that never were: what holds is whole and in time, and a scan stops at the first that does not. */
    @Test
    void it_says_where_it_breaks() {
        int broken = 0;
        for (long seed = 1; seed <= 12; seed++) {
            Shop shop = AnyShop.of(seed);
            List<Integer> heard = new ArrayList<>();
            Growth growth = new Growth(shop, new Budget(0, 1, 60_000), (count, way, day, percent) -> heard.add(count));
            Growth.Answer answer = growth.untilBroken(GrowthWay.AS_IT_IS, day(shop, seed), PERCENTS);
            assertThat(heard).hasSameSizeAs(answer.points()).startsWith(1);
            answer.last().ifPresent(last -> {
                assertThat(last.packs().missing()).isZero();
                assertThat(last.lateMinutes()).isZero();
            });
            if (answer.broken().isEmpty()) continue;
            broken++;
            GrowthPoint point = answer.broken().get();
            assertThat(point).isEqualTo(answer.points().get(answer.points().size() - 1));
            assertThat(point.packs().missing() + point.lateMinutes()).isPositive();
            if (point.packs().missing() > 0) assertThat(point.reasons()).isNotEmpty();
        }
        assertThat(broken).isPositive();
    }

    @Test
    void one_more_station_is_like_the_first_of_its_stage() {
        Shop shop = AnyShop.of(5);
        WorkStation first = shop.floor().stations().get(0);
        Shop wider = GrowthWay.oneMore(first.stage()).shop().apply(shop);
        assertThat(wider.floor().stations()).hasSize(shop.floor().stations().size() + 1);
        WorkStation more = wider.floor().stations().get(shop.floor().stations().size());
        assertThat(more.places()).isEqualTo(first.places());
        assertThat(more.openings()).isEqualTo(first.openings());
    }

    @Test
    void an_earlier_start_moves_only_what_starts_first() {
        Shop shop = AnyShop.of(5);
        Shop earlier = GrowthWay.startEarlier(60).shop().apply(shop);
        var first = shop.floor().stations().stream()
                .flatMap(station -> station.openings().stream())
                .map(opening -> opening.from())
                .min(java.time.LocalTime::compareTo)
                .orElseThrow();
        for (int i = 0; i < shop.floor().stations().size(); i++) {
            var before = shop.floor().stations().get(i).openings().get(0);
            var after = earlier.floor().stations().get(i).openings().get(0);
            assertThat(after.until()).isEqualTo(before.until());
            assertThat(after.from())
                    .isEqualTo(before.from().equals(first) ? before.from().minusMinutes(60) : before.from());
        }
    }

    @Test
    void a_van_is_full_when_its_cases_are() {
        Shop shop = AnyShop.of(5);
        Growth.Day day = day(shop, 5);
        var full = Growth.fullVans(shop, day, List.of(100, 1000, 10_000));
        for (var van : full.entrySet()) {
            long cases = Growth.scaled(day.book(), van.getValue()).lines().stream()
                    .filter(line -> line.route().equals(van.getKey()))
                    .mapToLong(line -> cases(shop, line))
                    .sum();
            assertThat(cases).isGreaterThan(shop.route(van.getKey()).cases());
        }
        assertThat(full).isNotEmpty();
    }

    private static long cases(Shop shop, BookLine line) {
        int packsInCase = shop.product(line.product()).packsInCase();
        return (line.packs() + packsInCase - 1) / packsInCase;
    }

    @Test
    void the_kettles_are_looked_at_and_the_most_used_stage() {
        Shop shop = new dawnkettle.DemoDay(java.time.LocalDate.of(2026, 12, 4)).conf.shop();
        GrowthPoint point = new GrowthPoint(
                100,
                1,
                dawnkettle.measure.Mass.ZERO,
                new GrowthPoint.Packs(1, 0),
                java.util.Map.of(),
                java.time.Instant.EPOCH,
                List.of(new GrowthPoint.Load("hands", 99), new GrowthPoint.Load("filter", 90)),
                List.of());
        assertThat(Growth.stagesToWiden(shop, point)).containsExactly("cook", "filter");
        assertThat(shop.recipes().stream()
                        .flatMap(recipe -> recipe.steps().stream())
                        .map(Step::stage))
                .contains("cook", "filter");
    }
}
