package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.List;

/** The senses of a line, and what beside a figure or a day tells what it is. */
record DayWords(List<Sense> senses) {
    /** A sense that has nothing to do with a quantity before it. */
    static final Kind[] QUANTIFIED = {
        Kind.KIND,
        Kind.FORM,
        Kind.CASE,
        Kind.UNIT,
        Kind.TIMES,
        Kind.CODE,
        Kind.DOZEN,
        Kind.MEASURE,
        Kind.SIZE,
        Kind.MORE
    };

    int size() {
        return senses.size();
    }

    Sense sense(int index) {
        return index >= 0 && index < senses.size() ? senses.get(index) : new Sense(Kind.STOP, "end", 0, 0);
    }

    boolean is(int index, Kind... kinds) {
        return sense(index).is(kinds);
    }

    /** "Fri 18 firm 30 pouches": as a date the figure would leave a product without its own. */
    boolean countsWithOthers(int number) {
        int products = 0;
        int figures = 0;
        boolean within = false;
        for (int i = number; i < senses.size() && !is(i, Kind.COMMA, Kind.PARTED, Kind.STOP, Kind.WEEKDAY); i++) {
            boolean product = is(i, Kind.KIND, Kind.CODE) || !within && is(i, Kind.FORM);
            if (product && !within) products++;
            if (is(i, Kind.NUMBER, Kind.DOZEN, Kind.A)) figures++;
            if (!is(i, Kind.NOISE)) within = product || within && is(i, Kind.FORM, Kind.UNIT, Kind.SIZE);
        }
        return products > 1 && figures == products;
    }

    /** "Friday 18 firm, 6 medium": as a date the figure would leave its product without one. */
    boolean isAloneWithProduct(int number) {
        int at = number + 1;
        while (is(at, Kind.NOISE, Kind.UNIT, Kind.CASE, Kind.TIMES, Kind.GRADE)) at++;
        if (!is(at, Kind.KIND, Kind.CODE, Kind.FORM)) return false;
        while (is(at, Kind.KIND, Kind.CODE, Kind.FORM, Kind.UNIT, Kind.SIZE, Kind.MEASURE, Kind.NOISE)) at++;
        return !is(at, Kind.NUMBER, Kind.DOZEN, Kind.A, Kind.COLON, Kind.DASH, Kind.TIMES);
    }

    /** "Firm: Fri 12, Sat 18" */
    boolean isOneProductByDays() {
        int products = 0;
        int counted = 0;
        int days = 0;
        for (int i = 0; i < senses.size(); i++) {
            if (is(i, Kind.KIND, Kind.CODE)) products++;
            if (is(i, Kind.WEEKDAY)) days++;
            if (is(i, Kind.WEEKDAY) && is(i + 1, Kind.NUMBER)) counted++;
            if (is(i, Kind.NUMBER) && !is(i - 1, Kind.WEEKDAY)) return false;
        }
        return products == 1 && days > 1 && counted == days;
    }

    boolean isDate(int index) {
        return is(index, Kind.DATE) && !is(index + 1, Kind.CASE, Kind.MEASURE)
                || is(index, Kind.ORDINAL) && !isWord(index)
                || is(index, Kind.MONTH) && is(index + 1, Kind.NUMBER, Kind.ORDINAL)
                || is(index, Kind.NUMBER) && is(index + 1, Kind.MONTH);
    }

    /** "The tenth": a word, of a day only behind "the" and with nothing behind it that it could count. */
    boolean isDayWord(int index) {
        boolean article = index > 0 && is(index - 1, Kind.NOISE);
        return article && !is(index + 1, QUANTIFIED) && !is(index + 1, Kind.WEEKDAY, Kind.UNKNOWN, Kind.NUMBER);
    }

    boolean isWord(int index) {
        return sense(index).until() - sense(index).from() > 4;
    }

    boolean written(int from) {
        return is(from, Kind.ORDINAL) || sense(from).until() - sense(from).from() <= 2;
    }
}
