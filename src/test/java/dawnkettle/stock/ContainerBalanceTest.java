package dawnkettle.stock;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.DemoDay;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Web.Handed;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class ContainerBalanceTest {
    private static final Shop SHOP = ReadConfiguration.from(DemoDay.CONF).shop();
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private static final Instant NEXT_WEEK = Instant.parse("2026-12-11T12:00:00Z");

    private static Handed handed(String product, int packs, boolean gone) {
        return new Handed("A1", 1, "C002", "MARKET", FRIDAY, new LotCode("261204-ME01"), product, packs, gone);
    }

    private static Recorded recorded(Fact fact, int hour) {
        Instant at = NEXT_WEEK.plusSeconds(3600L * hour);
        return new Recorded(fact, at, at, "mail " + hour);
    }

    @Test
    void what_went_out_and_has_not_come_back_is_there_until_somebody_counts() {
        List<Handed> handed =
                List.of(handed("MED-BKT", 6, true), handed("MED-BKT", 2, false), handed("MED-400", 12, true));
        List<Recorded> records = List.of(
                recorded(new Fact.Returned("C002", "MED-BKT", Fact.Returned.What.CONTAINERS, 3, "containers"), 0),
                recorded(new Fact.Containers("C002", "MED-BKT", Fact.Containers.Way.OUT, 1, "lent"), 1),
                recorded(new Fact.Containers("C002", "MED-BKT", Fact.Containers.Way.COUNTED, 2, "seen"), 2),
                recorded(new Fact.Returned("C002", "MED-BKT", Fact.Returned.What.CONTAINERS, 1, "containers"), 3));

        assertThat(ContainerBalance.of(SHOP, handed, records.subList(0, 2)))
                .containsExactly(new ContainerBalance("C002", "MED-BKT", 7, 3, 0));
        assertThat(ContainerBalance.of(SHOP, handed, records))
                .containsExactly(new ContainerBalance("C002", "MED-BKT", 7, 4, -2))
                .allMatch(balance -> balance.there() == 1);
    }
}
