package dawnkettle.stock;

import dawnkettle.book.Admission;
import dawnkettle.book.Admission.Complaint;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.shop.Material;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The words of a record, read one by one; what is wrong with any of them is kept until all are read. */
final class FactWords {
    private static final Pattern AMOUNT = Pattern.compile("(-?[0-9]{1,9}(?:\\.[0-9]{1,6})?)([a-z]*)");

    private static final Pattern DEGREES = Pattern.compile("(-?[0-9]{1,3}(?:\\.[0-9])?)(?:°?[Cc])?");

    private final String command;
    private final List<String> words;
    private final List<Problem> problems = new ArrayList<>();

    FactWords(String command, List<String> words) {
        this.command = command;
        this.words = List.copyOf(words);
    }

    int size() {
        return words.size();
    }

    /** A word, counted from 0; nothing where there is none. */
    String at(int place) {
        return place < words.size() ? words.get(place) : "";
    }

    /** A word in quotes, short enough for a message. */
    String quoted(int place) {
        return "\"" + Admission.quotable(at(place)) + "\"";
    }

    void complain(int place, String what, String remedy) {
        problems.add(new Problem(new Place(command + " word", place + 1, 0), what, remedy));
    }

    void complain(int place, Complaint complaint) {
        complain(place, complaint.what(), complaint.remedy());
    }

    void complainOf(String option, String what, String remedy) {
        problems.add(new Problem(Place.of(option), what, remedy));
    }

    /** @throws BadFile where there are fewer words, or more, than a command needs; reading on would only guess */
    void expect(int least, int most, String form) {
        if (words.size() < least)
            throw new BadFile(List.of(new Problem(Place.of(command), "a word is missing", "write as in: " + form)));
        if (words.size() > most) complain(most, quoted(most) + " is a word too many", "write as in: " + form);
    }

    void throwIfBad() {
        if (!problems.isEmpty()) throw new BadFile(problems);
    }

    Optional<Integer> whole(int place, String name, int least, int most) {
        String word = at(place);
        if (word.matches("-[0-9]+"))
            complain(place, name + " " + quoted(place) + " is below zero", "write " + least + " or more");
        else if (word.matches("[0-9]{1,6}") && Integer.parseInt(word) >= least && Integer.parseInt(word) <= most)
            return Optional.of(Integer.parseInt(word));
        else
            complain(
                    place,
                    name + " " + quoted(place) + " is not a whole number from " + least + " to " + most,
                    "write a number, as 24");
        return Optional.empty();
    }

    /** How much of a material, in the unit that it is bought by. */
    Optional<Quantity> quantity(int place, Material.Unit unit) {
        return quantity(place, at(place), unit);
    }

    /** A mass, in kilograms where no unit stands behind it. */
    Optional<Mass> kilograms(int place) {
        String word = at(place).matches("-?[0-9.]+") ? at(place) + "kg" : at(place);
        return quantity(place, word, Material.Unit.KILOGRAM).map(mass -> Mass.milligrams(mass.smallest()));
    }

    private Optional<Quantity> quantity(int place, String word, Material.Unit unit) {
        Matcher amount = AMOUNT.matcher(word.toLowerCase(Locale.ROOT));
        int shift = amount.matches() ? shift(unit, amount.group(2)) : -1;
        if (shift < 0) complain(place, "quantity " + quoted(place) + " is not in " + inWords(unit), example(unit));
        else if (amount.group(1).startsWith("-"))
            complain(place, "quantity " + quoted(place) + " is below zero", "write what is there, 0 or more");
        else return exact(place, new BigDecimal(amount.group(1)).movePointRight(shift), unit);
        return Optional.empty();
    }

    private Optional<Quantity> exact(int place, BigDecimal smallest, Material.Unit unit) {
        if (smallest.stripTrailingZeros().scale() <= 0)
            return Optional.of(new Quantity(smallest.longValueExact(), unit));
        complain(place, "quantity " + quoted(place) + " is finer than is kept", "round it");
        return Optional.empty();
    }

    /** Decimal places from a unit to the smallest that is kept; -1 where the material is not counted in it. */
    private static int shift(Material.Unit unit, String word) {
        return switch (unit) {
            case KILOGRAM -> word.equals("kg") ? 6 : word.equals("g") ? 3 : -1;
            case LITRE -> word.equals("l") ? 3 : word.equals("ml") ? 0 : -1;
            case PIECE -> word.isEmpty() || word.equals("pieces") ? 0 : -1;
        };
    }

    private static String inWords(Material.Unit unit) {
        return switch (unit) {
            case KILOGRAM -> "kilograms or grams";
            case LITRE -> "litres or millilitres";
            case PIECE -> "pieces";
        };
    }

    private static String example(Material.Unit unit) {
        return switch (unit) {
            case KILOGRAM -> "write it as 1500kg or 800g";
            case LITRE -> "write it as 20l or 500ml";
            case PIECE -> "write how many, as 1000";
        };
    }

    /** A temperature between two whole degrees, both allowed. */
    Optional<Celsius> celsius(int place, int least, int most) {
        Matcher degrees = DEGREES.matcher(at(place));
        String said = "temperature " + quoted(place);
        if (at(place).matches("-?[0-9.]+ ?°?[Ff]"))
            complain(place, said + " is in Fahrenheit", "write degrees Celsius");
        else if (!degrees.matches()) complain(place, said + " is not in tenths of a degree", "write it as 95.5");
        else {
            Celsius reached = Celsius.of(new BigDecimal(degrees.group(1)));
            if (reached.compareTo(Celsius.degrees(least)) >= 0 && reached.compareTo(Celsius.degrees(most)) <= 0)
                return Optional.of(reached);
            complain(
                    place,
                    said + " is not from " + least + " to " + most + " °C",
                    "look at the thermometer, and write degrees Celsius");
        }
        return Optional.empty();
    }

    /** All words from one on; nothing where there are none. */
    String rest(int from) {
        return words.size() <= from
                ? ""
                : String.join(" ", words.subList(from, words.size()))
                        .replaceAll("\\p{Cntrl}", " ")
                        .strip();
    }

    /** All words from one on, as one text that must be there. */
    Optional<String> text(int from, String name) {
        String text = rest(from);
        if (!text.isEmpty()) return Optional.of(text);
        complain(from, "no " + name + " is given", "write a few words on it at the end");
        return Optional.empty();
    }
}
