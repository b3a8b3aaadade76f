package dawnkettle.stock;

import dawnkettle.book.Admission;
import dawnkettle.measure.Money;
import dawnkettle.shop.Material;
import dawnkettle.stock.KnownLots.Bought;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Reads what came in, typed as {@code MATERIAL LOT QUANTITY PRICE [DATE]}. */
public final class ReadReceipt {
    private static final String FORM = "receive MATERIAL LOT QUANTITY PRICE [DATE] [until DATE]";
    private static final String UNTIL = "until";
    private static final int FEWEST = 4;
    private static final int CURRENCY_OR_DATE = 4;

    /** What fits on a sheet's column and is a code, not a sentence. */
    private static final Pattern LOT = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._/-]{0,23}");

    private final FactWords words;
    private final Desk desk;
    private final Admission admission;

    private ReadReceipt(List<String> typed, Desk desk) {
        this.words = new FactWords("receive", FactWords.priceInOneWord(typed, CURRENCY_OR_DATE));
        this.desk = desk;
        this.admission = desk.admission();
    }

    /** @throws dawnkettle.trouble.BadFile with every word that cannot be read or is refused */
    public static Recorded read(List<String> words, Desk desk) {
        return new ReadReceipt(words, desk).read();
    }

    private Recorded read() {
        words.expect(FEWEST, FEWEST + 3, FORM);
        Optional<Material> material = admission.findMaterial(words.at(0));
        if (material.isEmpty()) words.complain(0, admission.unknownMaterial(words.at(0)));
        String lot = lot(material);
        Optional<Quantity> quantity = material.flatMap(known -> words.quantity(2, known.unit()));
        if (quantity.filter(amount -> amount.smallest() == 0).isPresent())
            words.complain(2, "quantity " + words.quoted(2) + " is nothing", "write how much came in");
        Optional<Money> paid = words.money(3, desk.shop().house().currency(), "all of it cost");
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
