package dawnkettle.conf;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.shop.Costs;
import dawnkettle.shop.PackUse;
import dawnkettle.shop.Rate;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What costs are reckoned by besides the rates of {@code shop.toml}: two files that may be left out, and a key. */
class CostFilesTest {
    private static final String RATES = "rate,amount,from\n";
    private static final String PACKAGING = "product,material,per,pieces\n";

    @TempDir
    Path dir;

    private CornerShop shop;

    @BeforeEach
    void copy() throws IOException {
        shop = CornerShop.in(dir);
    }

    @Test
    void without_them_the_standard_holds_and_nothing_is_packed() {
        Costs costs = shop.read().shop().costs();
        assertThat(costs.details()).isEqualTo(Costs.Details.NONE);
        assertThat(costs.on(LocalDate.of(2030, 1, 1))).isEqualTo(costs);
    }

    @Test
    void a_rate_holds_from_its_day_on_and_the_standard_stays() throws IOException {
        Costs costs = shop.holding("rates.csv", RATES + "hourly-wage,25.50,2027-01-01\nhourly-wage,26.00,2027-07-01\n")
                .read()
                .shop()
                .costs();
        assertThat(costs.on(LocalDate.of(2026, 12, 31)).hourlyWage()).isEqualTo(costs.hourlyWage());
        assertThat(costs.on(LocalDate.of(2027, 1, 1)).hourlyWage().minor()).isEqualTo(2_550);
        assertThat(costs.on(LocalDate.of(2028, 1, 1)).hourlyWage().minor()).isEqualTo(2_600);
        assertThat(costs.standard().on(LocalDate.of(2028, 1, 1)).hourlyWage()).isEqualTo(costs.hourlyWage());
        assertThat(costs.details().rates()).extracting(Rate::kind).containsOnly(Rate.Kind.HOURLY_WAGE);
    }

    @Test
    void packaging_is_read_and_a_part_of_a_piece_too() throws IOException {
        Costs costs = shop.holding("packaging.csv", PACKAGING + "FIRM,OIL,pack,1\nBKT,OIL,case,0.05\n")
                .read()
                .shop()
                .costs();
        assertThat(costs.details().packing())
                .extracting(PackUse::per)
                .containsExactly(PackUse.Per.PACK, PackUse.Per.CASE);
        assertThat(costs.details().packing().get(1).pieces()).hasToString("0.05");
    }

    @Test
    void each_mistake_is_named_with_its_place_and_its_remedy() throws IOException {
        shop.holding(
                        "rates.csv",
                        RATES + "rent,1.00,2027-01-01\nhourly-wage,24.00 EUR,2027-01-01\nper-route,-1,2027-01-01\n"
                                + "per-route,60.00,2027-01-01\nper-route,61.00,2027-01-01\n")
                .holding("packaging.csv", PACKAGING + "FIRMX,OIL,pack,1\nFIRM,OIL,box,1\nFIRM,OIL,pack,0\n");
        assertThat(shop.problems())
                .containsExactlyInAnyOrder(
                        "rates.csv:2:1: rate \"rent\" is not known; write one of: hourly-wage, energy-per-kwh,"
                                + " water-per-m3, overhead-per-day, per-route, okara-per-kg",
                        "rates.csv:3:13: amount \"24.00 EUR\" is in another currency; write it in USD, the number alone",
                        "rates.csv:4:11: amount \"-1\" is out of range; write a number with at most 2 decimals from 0 to"
                                + " 1000000",
                        "rates.csv:6:17: from \"2027-01-01\" already has a rate of this kind in line 5; keep one",
                        "packaging.csv:2:1: product \"FIRMX\" is no product; write \"FIRM\" or add it to products.csv",
                        "packaging.csv:3:10: per \"box\" is not known; write one of: pack, case",
                        "packaging.csv:4:15: pieces \"0\" is out of range; write a number with at most 4 decimals from"
                                + " 0.0001 to 1000");
    }

    @Test
    void a_price_step_is_an_amount_above_zero() throws IOException {
        assertThat(shop.with("shop.toml", "okara_per_kg", "price_step = 0\nokara_per_kg")
                        .problems())
                .singleElement()
                .asString()
                .endsWith("price_step \"0\" is no step; write an amount above 0, as 0.05");
    }
}
