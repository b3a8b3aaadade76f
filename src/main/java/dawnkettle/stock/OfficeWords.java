package dawnkettle.stock;

import dawnkettle.book.Nearest;
import dawnkettle.measure.Money;
import dawnkettle.shop.Customer;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Product;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The words of records from the desk: what a pack costs from a day on, and the hours that were really worked. */
final class OfficeWords {
    private static final String EVERYDAY = "everyday";
    private static final Pattern CLOCK = Pattern.compile("([0-9]{1,3}):([0-5][0-9])");
    private static final Pattern DECIMAL = Pattern.compile("[0-9]{1,3}(?:\\.[0-9]{1,2})?");
    private static final BigDecimal MINUTES = BigDecimal.valueOf(60);

    /** No small workshop works longer in a day, all hands together (common practice, no source). */
    private static final Duration MOST = Duration.ofHours(500);

    private final FactWords words;
    private final Desk desk;

    OfficeWords(FactWords words, Desk desk) {
        this.words = words;
        this.desk = desk;
    }

    Optional<Fact> fact(String kind) {
        return kind.equals("price") ? priced() : worked();
    }

    private Optional<Fact> priced() {
        words.expect(5, 6, "record price PRODUCT AMOUNT from DATE [LIST]");
        Optional<Product> product = desk.admission().findProduct(words.at(1));
        if (product.isEmpty()) words.complain(1, desk.admission().unknownProduct(words.at(1)));
        Optional<Money> price = words.money(2, desk.shop().house().currency(), "a pack costs");
        if (price.filter(each -> each.minor() == 0).isPresent())
            words.complain(2, "price " + words.quoted(2) + " is nothing", "write what a pack costs");
        if (!words.at(3).equalsIgnoreCase("from"))
            words.complain(3, words.quoted(3) + " is not the word from", "write from which day: from " + desk.today());
        Optional<LocalDate> from = day(4);
        Optional<String> list = words.size() > 5 ? list(5) : Optional.of(EVERYDAY);
        return product.isPresent() && price.isPresent() && from.isPresent() && list.isPresent()
                ? Optional.of(new Fact.Priced(list.get(), product.get().code(), price.get(), from.get()))
                : Optional.empty();
    }

    private Optional<String> list(int place) {
        List<String> known = List.copyOf(new TreeSet<>(Stream.concat(
                        Stream.concat(
                                Stream.of(EVERYDAY),
                                desk.shop().prices().stream().map(ListPrice::priceList)),
                        desk.shop().customers().stream().map(Customer::priceList))
                .toList()));
        Optional<String> list =
                known.stream().filter(words.at(place)::equalsIgnoreCase).findFirst();
        if (list.isEmpty())
            words.complain(
                    place,
                    "there is no price list " + words.quoted(place),
                    Nearest.to(words.at(place), known)
                            .map(near -> "did you mean \"" + near + "\"?")
                            .orElse("write one of " + String.join(", ", known)));
        return list;
    }

    private Optional<Fact> worked() {
        words.expect(3, 3, "record hours DAY HOURS");
        Optional<LocalDate> day = day(1);
        if (day.filter(one -> one.isAfter(desk.today())).isPresent())
            words.complain(1, "date " + words.quoted(1) + " is in the future", "record the hours when they are worked");
        Optional<Duration> hours = hours(2);
        return day.isPresent() && hours.isPresent()
                ? Optional.of(new Fact.Worked(day.get(), hours.get()))
                : Optional.empty();
    }

    private Optional<Duration> hours(int place) {
        Optional<Duration> hours = duration(words.at(place));
        if (hours.isEmpty())
            words.complain(
                    place,
                    "hours " + words.quoted(place)
                            + (words.at(place).startsWith("-") ? " are below zero" : " are not hours and minutes"),
                    "write all hands together, as 41.5 or 41:30");
        else if (hours.get().isZero() || hours.get().compareTo(MOST) > 0) {
            words.complain(
                    place,
                    "hours " + words.quoted(place) + " are not more than 0 and at most " + MOST.toHours(),
                    "write the hours of all hands together, not minutes");
            return Optional.empty();
        }
        return hours;
    }

    /** Decimals of an hour are taken to the nearest minute: 41.33 is 41:20. */
    private static Optional<Duration> duration(String word) {
        Matcher clock = CLOCK.matcher(word);
        if (clock.matches())
            return Optional.of(
                    Duration.ofHours(Long.parseLong(clock.group(1))).plusMinutes(Long.parseLong(clock.group(2))));
        if (!DECIMAL.matcher(word).matches()) return Optional.empty();
        return Optional.of(Duration.ofMinutes(new BigDecimal(word)
                .multiply(MINUTES)
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact()));
    }

    private Optional<LocalDate> day(int place) {
        Optional<LocalDate> day = desk.admission().findDay(words.at(place));
        if (day.isEmpty())
            words.complain(
                    place, "date " + words.quoted(place) + " is not a day", "write year-month-day, as " + desk.today());
        return day;
    }
}
