package dawnkettle.book;

/**
 * What a word or phrase of a mail means.
 *
 * @param value what exactly: "5" of a weekday, "firm" of a kind, the figure of a number
 * @param from where it begins in its line
 * @param until where it ends, exclusive
 */
record Sense(Kind kind, String value, int from, int until) {
    /** Kinds of meaning; those of the word lists by the same name in small letters. */
    enum Kind {
        WEEKDAY,
        MONTH,
        DAY,
        /** One or two letters before a date that a weekday can begin with; its value the weekdays. */
        BEGUN,
        THIS,
        NEXT,
        LAST,
        NEXT_WEEK,
        LAST_WEEK,
        /** "Week of", before a date. */
        WEEK_OF,
        ALL,
        EACH,
        NUMBER,
        DOZEN,
        A,
        AND_HALF,
        HALF_CASE,
        CASE_AND_HALF,
        CASE,
        UNIT,
        MEASURE,
        SIZE,
        /** "Small" or "big", of two sizes. */
        GRADE,
        TIMES,
        KIND,
        FORM,
        SET,
        SET_TO,
        TO,
        BY,
        ONLY,
        OLD,
        DROP,
        NO,
        SKIP,
        SAME,
        SAME_AS,
        DOUBLE,
        REST,
        MORE,
        UNSURE,
        /** Makes a figure beside it uncertain, and nothing else: "about", "just". */
        VAGUE,
        /** An hour of the day, or what stands behind one. */
        CLOCK,
        /** Of what was: got, left, last time. */
        PAST,
        /** "Because": what follows is a reason. */
        REASON,
        FORGET,
        /** "Order no.": the figure behind it counts nothing. */
        REFERENCE,
        HELLO,
        BYE,
        NOISE,
        /** A product by its code. */
        CODE,
        /** A figure with an ending, as in "4th". */
        ORDINAL,
        /** Figures that are a date, as written. */
        DATE,
        /** A day of delivery, its value the date; or a mention of one that must be asked, its value the reason. */
        ON,
        ON_ASKED,
        COMMA,
        PARTED,
        COLON,
        DASH,
        BRACKET,
        STOP,
        QUESTION_MARK,
        UNKNOWN
    }

    boolean is(Kind... kinds) {
        for (Kind one : kinds) if (kind == one) return true;
        return false;
    }

    Sense to(Kind other, String meaning) {
        return new Sense(other, meaning, from, until);
    }

    /** One sense in place of this and those up to {@code last}. */
    Sense through(Sense last, Kind other, String meaning) {
        return new Sense(other, meaning, from, last.until);
    }

    int figure() {
        return Integer.parseInt(value);
    }
}
