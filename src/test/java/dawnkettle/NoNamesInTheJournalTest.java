package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.shop.Customer;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a whole night tells the journal, which is kept for long and read by many: who the customers are is not in it. */
class NoNamesInTheJournalTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);

    @TempDir
    Path folder;

    @Test
    void a_full_night_with_mistaken_orders_names_no_customer_and_no_address() throws IOException {
        try (PlayedNight night = new PlayedNight(CopiedShop.quick(folder), DAY, "2026-12-03T05:00")) {
            Customer known = night.conf().shop().customers().get(0);
            night.drop(
                    "web.csv",
                    "order,line,customer,product,packs,delivery_date,action\n"
                            + "W-1,1," + known.name() + ",FIRM-400,24,2026-12-05,\n"
                            + "W-2,1," + known.name() + ",NO-SUCH,24,2026-12-05,\n");
            night.until("2026-12-04T06:30");

            List<String> names = names(night);
            assertThat(night.told).hasSizeGreaterThan(20).anyMatch(line -> line.contains("web.csv"));
            assertThat(names).hasSizeGreaterThan(150);
            for (String line : night.told) assertThat(names).as(line).noneMatch(name -> line.contains(name));
            assertThat(night.told).noneMatch(line -> line.matches(".*[\\w.+-]+@[\\w-]+\\.[\\w.]+.*"));
        }
    }

    private static List<String> names(PlayedNight night) {
        List<String> names = new ArrayList<>();
        for (Customer customer : night.conf().shop().customers())
            Stream.of(List.of(customer.name(), customer.address()), customer.aliases(), customer.mails())
                    .flatMap(List::stream)
                    .filter(name -> name.length() > 3)
                    .forEach(names::add);
        return names;
    }
}
