package dawnkettle.conf;

import dawnkettle.book.Nearest;
import dawnkettle.label.MarketWording;
import dawnkettle.measure.Celsius;
import dawnkettle.shop.Climate;
import dawnkettle.shop.Costs;
import dawnkettle.shop.House;
import dawnkettle.shop.PackUse;
import dawnkettle.shop.Rate;
import java.time.DayOfWeek;
import java.time.ZoneId;
import java.util.Collections;
import java.util.Currency;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Reads of {@code shop.toml} what the shop is: itself, its climate and what things cost. */
final class ReadHouse {
    private static final Currency STAND_IN = Currency.getInstance("USD");

    private final Section file;
    private final Section shop;
    private final Currency currency;
    private final Optional<Set<DayOfWeek>> workDays;

    ReadHouse(Section file) {
        this.file = file;
        this.shop = file.needSection("shop");
        this.currency = currency(shop.need("currency", "\"USD\""));
        this.workDays = workDays(shop);
    }

    Currency currency() {
        return currency;
    }

    /** Weekdays on which the shop makes; empty where that could not be read. */
    Optional<Set<DayOfWeek>> workDays() {
        return workDays;
    }

    House house() {
        House house = new House(
                shop.need("name", "\"Millrace Tofu Works\"").words(),
                shop.needList("address", "[\"12 Mill Lane\", \"Quillhaven\"]").stream()
                        .map(Written::words)
                        .toList(),
                zone(shop.need("zone", "\"America/New_York\"")),
                language(shop.need("language", "\"en-US\"")),
                currency,
                shop.find("units").map(units -> units.oneOf(House.Units.class)).orElse(House.Units.METRIC),
                shop.find("paper").map(paper -> paper.oneOf(House.Paper.class)).orElse(House.Paper.A4),
                market(shop.need("market", "\"us\"")));
        shop.noMore();
        return house;
    }

    private static ZoneId zone(Written zone) {
        if (zone.isBlank()) return ZoneId.of("UTC");
        Set<String> zones = ZoneId.getAvailableZoneIds();
        return zones.contains(zone.text())
                ? ZoneId.of(zone.text())
                : zone.bad(
                        ZoneId.of("UTC"),
                        "is no time zone",
                        "write one of the time-zone database, as \""
                                + Nearest.to(zone.text(), zones).orElse("America/New_York") + "\"");
    }

    private static String language(Written language) {
        try {
            new Locale.Builder().setLanguageTag(language.text());
            return language.words();
        } catch (IllformedLocaleException e) {
            return language.bad("en", "is no language tag (BCP 47)", "write it as en or en-US");
        }
    }

    private static Currency currency(Written currency) {
        if (currency.kind() == Written.Kind.MISSING) return STAND_IN;
        return Currency.getAvailableCurrencies().stream()
                .filter(one -> one.getCurrencyCode().equals(currency.text()) && one.getDefaultFractionDigits() >= 0)
                .findFirst()
                .orElseGet(
                        () -> currency.bad(STAND_IN, "is no currency (ISO 4217)", "write its three letters, as USD"));
    }

    private static String market(Written market) {
        if (market.kind() == Written.Kind.MISSING
                || MarketWording.find(market.text()).isPresent()) return market.text();
        return market.bad(
                "us", "is no market with label wording", "write one of: " + String.join(", ", MarketWording.markets()));
    }

    private static Optional<Set<DayOfWeek>> workDays(Section shop) {
        int before = shop.problems().count();
        Set<DayOfWeek> days =
                ReadStations.weekdays(shop.needList("work_days", "[\"mon\", \"tue\", \"wed\", \"thu\", \"fri\"]"));
        return shop.problems().count() > before ? Optional.empty() : Optional.of(days);
    }

    Climate climate() {
        Section climate = file.needSection("climate");
        Climate norms = new Climate(
                twelve(climate, "room_c", "[16, 16, 17, 18, 20, 23, 25, 25, 22, 20, 18, 17]"),
                twelve(climate, "tap_c", "[6, 6, 8, 11, 15, 19, 22, 22, 19, 15, 12, 9]"));
        climate.noMore();
        return norms;
    }

    private static List<Celsius> twelve(Section climate, String key, String example) {
        int before = climate.problems().count();
        List<Celsius> norms = climate.needList(key, example).stream()
                .map(norm -> norm.celsius(0, 45))
                .toList();
        if (norms.size() == 12) return norms;
        if (climate.problems().count() == before)
            climate.problems()
                    .add(
                            climate.find(key).map(Written::place).orElse(climate.place()),
                            key + " has \"" + norms.size() + "\" norms",
                            "write twelve, January first, in °C");
        return Collections.nCopies(12, Celsius.degrees(15));
    }

    /** @param details what other files say of them */
    Costs costs(List<Rate> rates, List<PackUse> packing) {
        Section costs = file.needSection("costs");
        Costs read = new Costs(
                costs.need("hourly_wage", "24.00").money(currency),
                costs.need("energy_per_kwh", "0.14").money(currency),
                costs.need("cooker_efficiency", "0.5").ratio("0.05", "1"),
                costs.need("water_per_m3", "4.20").money(currency),
                costs.need("overhead_per_day", "420.00").money(currency),
                costs.need("per_route", "65.00").money(currency),
                costs.need("okara_per_kg", "0.03").money(currency),
                new Costs.Details(rates, packing, priceStep(costs)));
        costs.noMore();
        return read;
    }

    private long priceStep(Section costs) {
        return costs.find("price_step")
                .map(step -> {
                    long minor = step.money(currency).minor();
                    return minor > 0 ? minor : step.bad(1L, "is no step", "write an amount above 0, as 0.05");
                })
                .orElse(Costs.Details.USUAL_STEP);
    }
}
