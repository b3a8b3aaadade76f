package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import dawnkettle.shop.Pack;
import dawnkettle.shop.Product;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Puts figures together: two dozen, a case and a half, 400 g; a size becomes one sense, "g400" or "ml500". */
final class Figures {
    private static final Sense END = new Sense(Kind.STOP, "", 0, 0);
    private static final Pattern CONTENT = Pattern.compile("(\\d+) pieces");
    private final Set<String> sizes;
    private final Set<String> contents;
    private final List<Sense> made = new ArrayList<>();

    private Figures(List<Product> products) {
        contents = products.stream()
                .flatMap(product -> CONTENT.matcher(product.name()).results())
                .map(found -> found.group(1))
                .collect(Collectors.toSet());
        sizes = products.stream().map(Figures::size).collect(Collectors.toSet());
    }

    static String size(Product product) {
        return product.packing()
                .volume()
                .filter(volume -> product.packing().pack() == Pack.BOTTLE)
                .map(volume -> "ml" + volume.millilitres())
                .orElse("g" + product.net().milligrams() / 1_000);
    }

    static List<Sense> in(List<Sense> senses, List<Product> products) {
        Figures figures = new Figures(products);
        for (int at = 0; at < senses.size(); )
            at += figures.take(senses.get(at), senses.subList(at + 1, senses.size()));
        return figures.made.stream().anyMatch(sense -> sense.is(Kind.SET_TO))
                ? withoutFrom(figures.made.stream().map(Figures::upTo).toList())
                : figures.made;
    }

    /** "Bump the ginger up to 20" */
    private static Sense upTo(Sense sense) {
        return sense.is(Kind.VAGUE) && sense.value().equals("to") ? sense.to(Kind.TO, "") : sense;
    }

    /** "Change the medium from 1 bucket to 2 buckets": what it was says nothing new. */
    private static List<Sense> withoutFrom(List<Sense> made) {
        List<Sense> kept = new ArrayList<>();
        for (int at = 0; at < made.size(); at++) {
            int to = at + 2;
            boolean from = made.get(at).is(Kind.UNSURE)
                    && made.get(at).value().equals("from")
                    && at + 1 < made.size()
                    && made.get(at + 1).is(Kind.NUMBER);
            while (from && to < made.size() && made.get(to).is(Kind.FORM, Kind.UNIT, Kind.CASE)) to++;
            boolean whole = from && to < made.size() && made.get(to).is(Kind.TO);
            if (whole) at = to - 1;
            else kept.add(made.get(at));
        }
        return kept;
    }

    /** @return how many senses were taken */
    private int take(Sense one, List<Sense> rest) {
        Sense next = rest.isEmpty() ? END : rest.get(0);
        Sense last = rest.size() < 2 ? END : rest.get(1);
        int clock = clock(one, next);
        if (clock > 0) return clock;
        if (isHour(one, next, last)) return put(one.through(next, Kind.NOISE, "")) + 1;
        if (one.is(Kind.MORE) && one.value().equals("top") && next.is(Kind.NUMBER))
            return put(one.through(next, Kind.MORE, "")) + 1;
        if (one.is(Kind.UNKNOWN) && one.value().equals("@") && next.value().matches("\\d+\\.\\d\\d"))
            return put(one.through(next, Kind.NOISE, "")) + 1;
        if (one.is(Kind.REFERENCE)) return reference(one, rest);
        if (isSizeBefore(one, rest)) return put(one.to(Kind.SIZE, one.value()));
        if (isOrigin(one, next)) return put(one.to(Kind.NOISE, ""));
        if (one.is(Kind.OLD) && one.value().equals("was") && !next.is(Kind.NUMBER, Kind.A))
            return put(one.to(Kind.PAST, ""));
        if (isTwice(one, rest)) return number(one, rest.get(2), one.value(), 4);
        if (one.is(Kind.UNKNOWN) && one.value().equals("½")) return number(one, one, "0.5", 1);
        if (one.is(Kind.DATE) && one.value().equals("1/2") && next.is(Kind.CASE)) return number(one, one, "0.5", 1);
        if (one.is(Kind.NUMBER) && next.value().equals("½")) return number(one, next, one.value() + ".5", 2);
        if (one.is(Kind.NUMBER) && next.is(Kind.DATE) && next.value().equals("1/2") && last.is(Kind.CASE))
            return number(one, next, one.value() + ".5", 2);
        if (one.is(Kind.AND_HALF) && next.is(Kind.DOZEN)) return andHalfDozen(one, next);
        if (one.is(Kind.NUMBER) && next.is(Kind.AND_HALF)) return number(one, next, one.value() + ".5", 2);
        if (next.is(Kind.DOZEN) && last.is(Kind.AND_HALF) && one.is(Kind.A, Kind.NUMBER))
            return dozenAndHalf(one, next, last);
        if (one.is(Kind.DOZEN) && next.is(Kind.AND_HALF))
            return 1 + dozenAndHalf(one.to(Kind.NUMBER, "1"), one, next) - 2;
        if (one.is(Kind.NUMBER) && next.is(Kind.DOZEN)) return dozens(one, next);
        if (one.is(Kind.A) && next.is(Kind.DOZEN)) return number(one, next, next.value(), 2);
        if (one.is(Kind.NUMBER) && one.value().equals("1") && next.is(Kind.HALF_CASE))
            return cases(one, next, "0.5", 2);
        if (one.is(Kind.DOZEN)) return number(one, one, one.value(), 1);
        if (one.is(Kind.HALF_CASE)) return cases(one, one, "0.5", 1);
        if (one.is(Kind.A) && next.is(Kind.CASE_AND_HALF)) return cases(one, next, "1.5", 2);
        if (one.is(Kind.CASE_AND_HALF) && begins()) return cases(one, one, "1.5", 1);
        if (isContent(one, next, last)) return put(next.to(Kind.NOISE, "")) + 1;
        if (one.is(Kind.NUMBER) && next.is(Kind.CASE_AND_HALF)) return cases(one, next, one.value() + ".5", 2);
        if (one.is(Kind.NUMBER) && next.is(Kind.MEASURE)) return measured(one, next);
        if (one.is(Kind.MEASURE)) return put(one.value().equals("l") ? one.to(Kind.SIZE, "ml1000") : unsure(one));
        if (one.is(Kind.SIZE)) return put(one.to(Kind.SIZE, listed(one.value())));
        return put(one);
    }

    /** "Before 7 am", "at 6:30". @return how many senses were taken */
    private int clock(Sense one, Sense next) {
        boolean hour =
                one.is(Kind.NUMBER) && next.is(Kind.CLOCK) && next.value().isEmpty();
        if (!hour && !one.is(Kind.CLOCK)) return 0;
        if (one.is(Kind.CLOCK) && one.value().isEmpty()) return put(one.to(Kind.UNKNOWN, "clock"));
        int before = made.size() - 1;
        if (before >= 0 && made.get(before).is(Kind.UNSURE, Kind.BY))
            made.set(before, made.get(before).to(Kind.NOISE, ""));
        boolean both = hour || next.is(Kind.CLOCK) && next.value().isEmpty();
        made.add(one.to(Kind.NOISE, ""));
        return both ? 2 : 1;
    }

    /** "By 9", "after 1"; not "reduce it by 2", "after 2 cases". */
    private boolean isHour(Sense one, Sense next, Sense last) {
        boolean before = one.is(Kind.BY) || one.is(Kind.UNSURE) && one.value().equals("hour");
        boolean counts = last.is(DayWords.QUANTIFIED) || last.is(Kind.MONTH, Kind.PARTED, Kind.DASH, Kind.ORDINAL);
        return before
                && next.is(Kind.NUMBER)
                && next.value().matches("\\d|1[0-2]")
                && !counts
                && made.stream().noneMatch(sense -> sense.is(Kind.SET_TO, Kind.SET));
    }

    /** "Order no. 118": nothing that is ordered. @return how many senses were taken */
    private int reference(Sense one, List<Sense> rest) {
        int at = 0;
        while (at < rest.size() && at < 2 && rest.get(at).is(Kind.STOP, Kind.COLON, Kind.NOISE)) at++;
        boolean counted = at + 1 < rest.size() && rest.get(at + 1).is(DayWords.QUANTIFIED);
        boolean number = at < rest.size() && rest.get(at).is(Kind.NUMBER, Kind.UNKNOWN);
        if (!number || counted) return put(one.to(Kind.UNSURE, ""));
        return put(one.through(rest.get(at), Kind.NOISE, "")) + at + 1;
    }

    /** "Firm 400, one dozen" */
    private boolean isSizeBefore(Sense one, List<Sense> rest) {
        boolean behind = one.is(Kind.NUMBER)
                && !made.isEmpty()
                && made.get(made.size() - 1).is(Kind.KIND, Kind.FORM);
        boolean sized = sizes.contains("g" + one.value()) || sizes.contains("ml" + one.value());
        boolean figure = rest.size() > 1
                && rest.get(0).is(Kind.COMMA, Kind.COLON, Kind.DASH)
                && rest.get(1).is(Kind.NUMBER, Kind.A, Kind.DOZEN);
        boolean another = rest.stream().limit(4).skip(2).anyMatch(s -> s.is(Kind.KIND, Kind.CODE, Kind.FORM));
        return behind && sized && figure && !another;
    }

    private boolean begins() {
        return made.isEmpty() || made.get(made.size() - 1).is(Kind.COMMA, Kind.PARTED, Kind.COLON, Kind.ON);
    }

    /** "20 fried pouches 6 pc 150 g": what a pack holds, as its name says. */
    private boolean isContent(Sense one, Sense next, Sense last) {
        boolean behindProduct = !made.isEmpty() && made.get(made.size() - 1).is(Kind.KIND, Kind.FORM);
        return one.is(Kind.NUMBER)
                && next.is(Kind.UNIT)
                && (last.is(Kind.SIZE, Kind.NUMBER))
                && behindProduct
                && contents.contains(one.value());
    }

    /** "From the canteen"; not "from 6", "from Monday". */
    private static boolean isOrigin(Sense one, Sense next) {
        return one.is(Kind.UNSURE)
                && one.value().equals("from")
                && !next.is(Kind.NUMBER, Kind.A, Kind.ON, Kind.ON_ASKED, Kind.DAY, Kind.DOZEN);
    }

    /** "Two (2)" */
    private static boolean isTwice(Sense one, List<Sense> rest) {
        return one.is(Kind.NUMBER)
                && rest.size() > 2
                && rest.get(0).is(Kind.BRACKET)
                && rest.get(1).is(Kind.NUMBER)
                && rest.get(1).value().equals(one.value())
                && rest.get(2).is(Kind.BRACKET);
    }

    private static Sense unsure(Sense one) {
        return one.to(Kind.UNSURE, "measure");
    }

    private int put(Sense sense) {
        made.add(sense);
        return 1;
    }

    private int number(Sense first, Sense last, String value, int taken) {
        made.add(first.through(last, Kind.NUMBER, value));
        return taken;
    }

    /** "Ten ginger and a half dozen milk" */
    private int andHalfDozen(Sense and, Sense dozen) {
        made.add(and.to(Kind.PARTED, ""));
        BigDecimal half = new BigDecimal(dozen.value()).divide(BigDecimal.valueOf(2));
        return number(and, dozen, half.toPlainString(), 2);
    }

    /** "A dozen and a half": 18. */
    private int dozenAndHalf(Sense many, Sense dozen, Sense half) {
        BigDecimal count = many.is(Kind.A) ? BigDecimal.ONE : new BigDecimal(many.value());
        BigDecimal all = count.add(new BigDecimal("0.5")).multiply(new BigDecimal(dozen.value()));
        return number(many, half, all.stripTrailingZeros().toPlainString(), 3);
    }

    private int dozens(Sense many, Sense dozen) {
        String product = new BigDecimal(many.value())
                .multiply(new BigDecimal(dozen.value()))
                .toPlainString();
        return number(many, dozen, product, 2);
    }

    private int cases(Sense first, Sense last, String value, int taken) {
        made.add(first.through(last, Kind.NUMBER, value));
        made.add(last.to(Kind.CASE, ""));
        return taken;
    }

    /** A size that something is sold in, or twelve of "litre"; any other mass is asked. */
    private int measured(Sense number, Sense measure) {
        String size = size(new BigDecimal(number.value()), measure.value());
        if (sizes.contains(size) && !measure.value().equals("litres"))
            made.add(number.through(measure, Kind.SIZE, size));
        else if (measure.value().equals("l") && measure.until() - measure.from() > 2) {
            made.add(number);
            made.add(measure.to(Kind.SIZE, "ml1000"));
        } else made.add(unsure(number.through(measure, Kind.UNSURE, "")));
        return 2;
    }

    private static String listed(String size) {
        String figures = size.replaceAll("[^0-9]", "");
        return size(new BigDecimal(figures), size.replaceAll("[0-9]", ""));
    }

    private static String size(BigDecimal number, String unit) {
        boolean large = unit.equals("kg") || unit.startsWith("l");
        BigDecimal small = (large ? number.movePointRight(3) : number).stripTrailingZeros();
        return (unit.endsWith("g") ? "g" : "ml") + small.toPlainString();
    }
}
