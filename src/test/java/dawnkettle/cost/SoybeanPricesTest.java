package dawnkettle.cost;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dawnkettle.trouble.Table;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Prices of soybeans that really moved; what each figure is known from stands in the file. */
class SoybeanPricesTest {
    private static Map<Integer, Double> prices() {
        try (InputStream in = SoybeanPricesTest.class.getResourceAsStream("soybean-prices.csv")) {
            Table table = Table.read("soybean-prices.csv", new String(in.readAllBytes(), UTF_8));
            Map<Integer, Double> prices = new TreeMap<>();
            for (Table.Row row : table.rows().subList(1, table.rows().size()))
                prices.put(
                        Integer.valueOf(row.cells().get(0).text()),
                        Double.valueOf(row.cells().get(1).text()));
            return prices;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void the_copy_has_the_known_mean_and_extremes() {
        List<Double> since2010 = prices().entrySet().stream()
                .filter(year -> year.getKey() >= 2010)
                .map(Map.Entry::getValue)
                .toList();
        assertThat(since2010.stream().mapToDouble(d -> d).average().orElseThrow())
                .isCloseTo(11.108, within(0.005));
        assertThat(since2010.stream().mapToDouble(d -> d).min().orElseThrow()).isEqualTo(8.48);
        assertThat(since2010.stream().mapToDouble(d -> d).max().orElseThrow()).isEqualTo(14.40);
        assertThat(prices().get(2014) / prices().get(2013) - 1).isCloseTo(-0.223, within(0.001));
    }

    /** 2007: 57.1 % up in a year, and it stayed up. */
    @Test
    void the_shock_of_2007_is_found_in_its_year() {
        assertThat(prices().get(2007) / prices().get(2006) - 1).isCloseTo(0.571, within(0.001));
        List<Double> years = List.copyOf(prices().values()).subList(0, 6);
        assertThat(Shift.find(years, 0.02)).hasValueSatisfying(shift -> {
            assertThat(2004 + shift.first()).isEqualTo(2007);
            assertThat(shift.weeks()).isEqualTo(1);
            assertThat(shift.size()).isBetween(0.571, 0.70);
        });
    }
}
