package dawnkettle.book;

import dawnkettle.book.Piece.Days;
import dawnkettle.book.Piece.Want;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Decides which day each wish of a mail is for.
 *
 * <p>A mail that names one day means it throughout. Where it names several, a day heads what follows it or ends what stands
 * before it, as the mail begins; where both could be meant the wish is asked.
 */
final class PlaceDays {
    private static final String NO_DAY = "For which day of delivery?";
    private static final String WHICH = "For which of the days?";

    private final List<Unit> units;
    private final List<Placed> placed = new ArrayList<>();
    private final List<Placed> waiting = new ArrayList<>();
    private Optional<Days> heading = Optional.empty();

    /** A wish with its days, which may have to be asked. */
    record Placed(Want want, Days days, Unit unit) {
        boolean isCertain() {
            return days.asked().isEmpty();
        }
    }

    private PlaceDays(List<Unit> units) {
        this.units = units.stream().filter(unit -> !unit.main().isEmpty()).toList();
    }

    static List<Placed> of(List<Unit> units, Optional<Days> subject) {
        PlaceDays place = new PlaceDays(units);
        List<Days> said = place.said(subject.isPresent());
        Optional<String> against = against(said, subject);
        if (against.isPresent() && place.isHead(subject.get())) place.below(subject.get());
        else if (against.isPresent()) place.all(asked(against.get()));
        else if (said.isEmpty()) place.all(subject.map(PlaceDays::one).orElse(asked(NO_DAY)));
        else if (said.stream().allMatch(days -> days.sameAs(said.get(0)))) place.single(said.get(0));
        else place.several();
        return place.placed;
    }

    /** Days of what is uncertain throughout are none of the rest, where others are said. */
    private List<Days> said(boolean elsewhere) {
        List<Days> certain = units.stream()
                .filter(unit -> unit.hasWants() || !unit.hasDoubts())
                .flatMap(unit -> unit.days().stream())
                .toList();
        if (!certain.isEmpty() || elsewhere) return certain;
        return units.stream().flatMap(unit -> unit.days().stream()).toList();
    }

    /** A subject's day can head the first lines where later days head those below them. */
    private boolean isHead(Days subject) {
        boolean first = units.get(0).hasWants() && !units.get(0).hasDays();
        boolean open = units.get(units.size() - 1).hasWants();
        LocalDate day = subject.days().get(0);
        return first
                && open
                && subject.days().size() == 1
                && units.stream()
                        .flatMap(unit -> unit.days().stream())
                        .allMatch(days -> !days.behind() && days.days().stream().allMatch(said -> said.isAfter(day)))
                && units.stream()
                        .filter(Unit::hasDays)
                        .allMatch(unit -> unit.hasWants() || unit != units.get(units.size() - 1));
    }

    private void below(Days subject) {
        heading = Optional.of(subject);
        several();
    }

    private static Days asked(String why) {
        return new Days(List.of(), why, false, "");
    }

    /** A subject alone can name one day for all of it. */
    private static Days one(Days subject) {
        return subject.asked().isEmpty() && subject.days().size() > 1 ? asked(WHICH) : subject;
    }

    private static Optional<String> against(List<Days> said, Optional<Days> subject) {
        if (said.isEmpty() || subject.isEmpty() || !subject.get().asked().isEmpty()) return Optional.empty();
        if (said.stream().anyMatch(days -> !days.asked().isEmpty())) return Optional.empty();
        boolean within = said.stream()
                .flatMap(days -> days.days().stream())
                .toList()
                .containsAll(subject.get().days());
        return within ? Optional.empty() : Optional.of("The subject names another day; which is meant?");
    }

    private void put(Piece piece, Days days, Unit unit) {
        if (piece instanceof Want want) placed.add(new Placed(want, days, unit));
    }

    private void all(Days days) {
        for (Unit unit : units) unit.main().forEach(piece -> put(piece, days, unit));
    }

    private void single(Days days) {
        for (Unit unit : units) {
            boolean within = unit.hasDays() && !unit.beginsWithDays() && !unit.endsWithDays();
            Days here = within && days.days().size() > 1 ? asked(WHICH) : days;
            unit.main().forEach(piece -> put(piece, here, unit));
        }
    }

    private void several() {
        boolean ends = endsEach();
        for (int i = 0; i < units.size(); i++) {
            Unit unit = units.get(i);
            if (unit.hasDays() && unit.hasWants()) whole(unit);
            else if (unit.hasWants()) wantsAlone(unit);
            else if (waiting.isEmpty() && !ends && unit.hasDoubts())
                heading = Optional.of(unit.days().get(0));
            else daysAlone(unit.days().get(0), ends, i + 1 == units.size());
        }
        release(asked(WHICH));
    }

    /** Whether wishes and days take turns to the last day, wishes first. */
    private boolean endsEach() {
        boolean plain = units.stream().noneMatch(unit -> unit.hasDays() && unit.hasWants());
        for (int i = 1; i < units.size(); i++)
            if (!units.get(i).hasWants() && !units.get(i - 1).hasWants()) return false;
        return plain && units.get(0).hasWants() && !units.get(units.size() - 1).hasWants();
    }

    private void release(Days days) {
        waiting.forEach(one -> placed.add(new Placed(one.want(), days, one.unit())));
        waiting.clear();
    }

    private void wantsAlone(Unit unit) {
        if (heading.isPresent()) unit.main().forEach(piece -> put(piece, heading.get(), unit));
        else
            for (Piece piece : unit.main())
                if (piece instanceof Want want) waiting.add(new Placed(want, asked(WHICH), unit));
    }

    private void daysAlone(Days days, boolean ends, boolean last) {
        if (days.behind() && !waiting.isEmpty() || ends) release(days);
        else if (!waiting.isEmpty() || days.behind()) release(asked(WHICH));
        if (last && !ends && heading.isPresent() && !days.sameAs(heading.get())) takeBack(heading.get());
        heading = ends || days.behind() ? Optional.empty() : Optional.of(days);
    }

    /** A day at the very end may be meant for what stands before it. */
    private void takeBack(Days before) {
        placed.replaceAll(one -> one.days() == before ? new Placed(one.want(), asked(WHICH), one.unit()) : one);
    }

    /** A sentence with its own days: they all stand before their wishes, or all behind. */
    private void whole(Unit unit) {
        release(asked(WHICH));
        List<Piece> main = unit.main();
        boolean before = unit.beginsWithDays() && !unit.endsWithDays();
        boolean behind = unit.endsWithDays() && !unit.beginsWithDays();
        if (apart(unit, main)) return;
        boolean one =
                unit.days().stream().allMatch(days -> days.sameAs(unit.days().get(0)))
                        && unit.days().size() > 1;
        Days days = asked(WHICH);
        boolean nothing = unit.days().size() == 1
                && unit.pieces().stream()
                        .noneMatch(piece ->
                                piece instanceof Want want && want.wish().verb() != Piece.Verb.SKIP);
        if (nothing) days = unit.days().get(0);
        if (behind || one && !before) days = unit.days().get(0);
        for (int i = 0; i < main.size(); i++) {
            if (main.get(i) instanceof Days here) days = before ? here : behind ? nextDays(main, i, here) : days;
            else put(main.get(i), days, unit);
        }
        heading = before ? Optional.of(days) : Optional.of(asked(WHICH));
    }

    /** "6 firm for Monday, for Friday 8", "Friday 6 firm, and 8 medium for Saturday": whose day is whose is certain. */
    private boolean apart(Unit unit, List<Piece> main) {
        int cut = -1;
        for (int i = 1; i < main.size(); i++)
            if (main.get(i) instanceof Days && main.get(i - 1) instanceof Days) cut = cut < 0 ? i : 0;
        boolean four = main.size() == 4
                && main.get(0) instanceof Days
                && main.get(1) instanceof Want
                && main.get(2) instanceof Want
                && main.get(3) instanceof Days;
        boolean skipped = main.size() > 3
                && main.get(0) instanceof Days
                && main.get(main.size() - 2) instanceof Want last
                && last.wish().verb() == Piece.Verb.SKIP
                && unit.days().size() == 2
                && unit.endsWithDays();
        if (four || skipped) cut = main.size() - 2;
        boolean behind = cut > 0 && main.get(cut - 1) instanceof Days && main.get(0) instanceof Want;
        boolean before = cut > 0 && main.get(main.size() - 1) instanceof Want && main.get(cut) instanceof Days;
        boolean around = four || skipped;
        if (!around && !(behind && before)) return false;
        half(unit, main.subList(0, cut), around);
        half(unit, main.subList(cut, main.size()), !around);
        heading = around ? Optional.of(asked(WHICH)) : heading;
        return true;
    }

    private void half(Unit unit, List<Piece> half, boolean before) {
        Days now = asked(WHICH);
        for (int i = 0; i < half.size(); i++) {
            if (half.get(i) instanceof Days here) now = here;
            else put(half.get(i), before ? now : nextDays(half, i, now), unit);
        }
        heading = Optional.of(before ? now : asked(WHICH));
    }

    private static Days nextDays(List<Piece> main, int at, Days here) {
        for (int i = at + 1; i < main.size(); i++) if (main.get(i) instanceof Days next) return next;
        return here;
    }
}
