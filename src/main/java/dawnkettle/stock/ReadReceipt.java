package dawnkettle.stock;

import dawnkettle.book.Admission;
import dawnkettle.measure.Money;
import dawnkettle.shop.Material;
import dawnkettle.stock.KnownLots.Bought;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads what came in, typed as {@code MATERIAL LOT QUANTITY PRICE [DATE]}. */
public final class ReadReceipt {
    private static final String FORM = "receive MATERIAL LOT QUANTITY PRICE [DATE] [until DATE]";
    private static final String UNTIL = "until";
    private static final int FEWEST = 4;
    private static final int CURRENCY_OR_DATE = 4;

    /** What fits on a sheet's column and is a code, not a sentence. */
    private static final Pattern LOT = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._/-]{0,23}");

    private static final Pattern PRICE = Pattern.compile("(-?[0-9]{1,9}(?:\\.[0-9]{1,4})?)([A-Za-z]{3})?");

    private final FactWords words;
    private final Desk desk;
    private final Admission admission;

    private ReadReceipt(List<String> typed, Desk desk) {
        this.words = new FactWords("receive", priceInOneWord(typed));
        this.desk = desk;
        this.admission = desk.admission();
    }

    /** @throws dawnkettle.trouble.BadFile with every word that cannot be read or is refused */
    public static Recorded read(List<String> words, Desk desk) {
        return new ReadReceipt(words, desk).read();
    }

    /** Joins a currency that was typed as a word of its own to its amount. */
    private static List<String> priceInOneWord(List<String> typed) {
        if (typed.size() <= CURRENCY_OR_DATE || !typed.get(CURRENCY_OR_DATE).matches("[A-Za-z]{3}")) return typed;
        List<String> joined = new ArrayList<>(typed);
        joined.set(CURRENCY_OR_DATE - 1, typed.get(CURRENCY_OR_DATE - 1) + joined.remove(CURRENCY_OR_DATE));
        return joined;
    }

    private Recorded read() {
        words.expect(FEWEST, FEWEST + 3, FORM);
        Optional<Material> material = admission.findMaterial(words.at(0));
        if (material.isEmpty()) words.complain(0, admission.unknownMaterial(words.at(0)));
        String lot = lot(material);
        Optional<Quantity> quantity = material.flatMap(known -> words.quantity(2, known.unit()));
        if (quantity.filter(amount -> amount.smallest() == 0).isPresent())
            words.complain(2, "quantity " + words.quoted(2) + " is nothing", "write how much came in");
        Optional<Money> paid = price();
        int until = words.at(FEWEST).equalsIgnoreCase(UNTIL) ? FEWEST : FEWEST + 1;
        Instant at = words.size() > FEWEST && until > FEWEST ? day() : desk.now();
        Optional<LocalDate> bestBefore = words.size() > until ? bestBefore(until) : Optional.empty();
        words.throwIfBad();
        return desk.write(
                new Fact.Received(
                        material.orElseThrow().code(), lot, quantity.orElseThrow(), paid.orElseThrow(), bestBefore),
                at);
    }

    /** The supplier's lot as it was first written; a lot is of one material, so that what is left of it can be told. */
    private String lot(Optional<Material> material) {
        if (!LOT.matcher(words.at(1)).matches())
            words.complain(
                    1,
                    "lot " + words.quoted(1) + " is not a code of 1 to 24 letters, digits and - _ . /",
                    "write the supplier's lot in one word");
        Optional<Bought> before = desk.lots().findBought(words.at(1));
        if (before.isPresent()
                && material.isPresent()
                && !before.get().material().equals(material.get().code()))
            words.complain(
                    1,
                    "lot " + words.quoted(1) + " is one of " + before.get().material(),
                    "write that material, or set this one's code before the lot");
        return before.map(Bought::lot).orElse(words.at(1));
    }

    private Optional<Money> price() {
        Currency ours = desk.shop().house().currency();
        Matcher price = PRICE.matcher(words.at(3));
        String said = "price " + words.quoted(3);
        if (!price.matches()) {
            words.complain(3, said + " is not an amount", "write what all of it cost, as 1620.00");
            return Optional.empty();
        }
        BigDecimal amount = new BigDecimal(price.group(1));
        String currency =
                price.group(2) == null ? ours.getCurrencyCode() : price.group(2).toUpperCase(Locale.ROOT);
        if (!currency.equals(ours.getCurrencyCode()))
            words.complain(
                    3, said + " is in " + currency, "this shop counts in " + ours + ": write what it cost in " + ours);
        else if (amount.signum() < 0)
            words.complain(3, said + " is below zero", "write what all of it cost, 0 or more");
        else if (amount.stripTrailingZeros().scale() > ours.getDefaultFractionDigits())
            words.complain(
                    3,
                    said + " is finer than " + ours + " is paid in",
                    "round it to " + ours.getDefaultFractionDigits() + " places");
        else return Optional.of(Money.of(amount, ours));
        return Optional.empty();
    }

    /** The supplier's own date; goods that are past it are refused at the door. */
    private Optional<LocalDate> bestBefore(int place) {
        if (!words.at(place).equalsIgnoreCase(UNTIL)) {
            words.complain(place, words.quoted(place) + " is a word too many", "write as in: " + FORM);
            return Optional.empty();
        }
        Optional<LocalDate> day = admission.findDay(words.at(place + 1));
        if (day.isEmpty())
            words.complain(
                    place + 1,
                    "date " + words.quoted(place + 1) + " is not a day",
                    "write the date on the sack as year-month-day");
        else if (day.get().isBefore(desk.today()))
            words.complain(
                    place + 1,
                    "date " + words.quoted(place + 1) + " has passed",
                    "do not take it in; look at the date on the sack");
        return day;
    }

    /** A day that was named counts from its first minute, so that the day's tubs may take of it. */
    private Instant day() {
        Optional<LocalDate> day = admission.findDay(words.at(FEWEST));
        if (day.isEmpty())
            words.complain(
                    FEWEST,
                    "date " + words.quoted(FEWEST) + " is not a day",
                    "write year-month-day, as " + desk.today());
        else if (day.get().isAfter(desk.today()))
            words.complain(
                    FEWEST,
                    "date " + words.quoted(FEWEST) + " is in the future",
                    "receive it when it is here; today is " + desk.today());
        return day.orElse(desk.today()).atStartOfDay(desk.zone()).toInstant();
    }
}
