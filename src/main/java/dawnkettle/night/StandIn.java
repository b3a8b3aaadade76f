package dawnkettle.night;

import dawnkettle.book.ClosedBook;
import dawnkettle.plan.Heading;
import dawnkettle.sheet.FallbackSheet;
import dawnkettle.sheet.Ordered;
import dawnkettle.sheet.OrdersOnlySheet;
import dawnkettle.sheet.Sheet;
import dawnkettle.store.Effect;
import dawnkettle.trouble.DiskAway;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What people work from where no plan comes out: the orders alone, printed once a day; where even these can't be had, the
 * fallback sheet that lies in the tray since the afternoon. It asks the book and the shop, and never the planner.
 */
final class StandIn {
    /** A time box of its own (common practice, no source). */
    private static final Duration LONGEST_WRITING = Duration.ofSeconds(60);

    private final Office office;
    private final SheetEffects effects;
    private final TimeBox box;

    StandIn(Office office, SheetEffects effects) {
        this.office = office;
        this.effects = effects;
        this.box = new TimeBox("writing the orders-only sheet", LONGEST_WRITING, () -> {});
    }

    /** Whether the orders alone hang on a wall already, or may: whatever comes later says to destroy them. */
    static boolean hasPrinted(Office office, LocalDate day) {
        return office.ledger()
                .effects()
                .find(SheetEffects.key(set(day), OrdersOnlySheet.NAME))
                .filter(effect -> effect.state() != Effect.State.INTENDED && effect.state() != Effect.State.FAILED)
                .isPresent();
    }

    /** How much of the computation people have, where they have no plan. */
    static Heading.Mode mode(Office office, LocalDate day) {
        return hasPrinted(office, day) ? Heading.Mode.ORDERS_ONLY : Heading.Mode.LAST_WEEK;
    }

    /** Which sheet to work from, in words. */
    static String sheet(Office office, LocalDate day) {
        String fallback = FallbackSheet.number(day);
        if (hasPrinted(office, day))
            return "orders-only sheet " + OrdersOnlySheet.number(day) + ", dates by hand from fallback sheet "
                    + fallback;
        return "fallback sheet " + fallback + (isFallbackPrinted(office, day) ? "" : " (it was not printed either)");
    }

    private static boolean isFallbackPrinted(Office office, LocalDate day) {
        String set = "fallback " + day;
        return Stream.of(set, SheetDate.inDoubt(set))
                .flatMap(one -> office.ledger().effects().find(SheetEffects.key(one, "fallback")).stream())
                .anyMatch(effect -> effect.state() == Effect.State.DONE);
    }

    private static String set(LocalDate day) {
        return "orders only " + day;
    }

    /**
     * Puts something into the tray that can be worked from.
     *
     * @return the mode, why, and which sheet, in words
     */
    String print(LocalDate day, RuntimeException why) {
        String missing = "";
        try {
            if (!hasPrinted(office, day)) effects.print(set(day), day, List.of(write(day, why)));
        } catch (DiskAway gone) {
            throw gone;
        } catch (RuntimeException also) {
            missing = "; the orders-only sheet did not come out: " + said(also);
        }
        String mode = mode(office, day) == Heading.Mode.ORDERS_ONLY ? "ORDERS ONLY" : "LAST WEEK";
        return mode + ", no plan: work from " + sheet(office, day) + " (" + said(why) + missing + ")";
    }

    private Sheet write(LocalDate day, RuntimeException why) {
        Optional<ClosedBook> closed = office.ledger().closes().find(day);
        ClosedBook book = closed.orElseGet(() -> office.book().close(day, office.now()));
        Ordered.Reason reason = why instanceof TimeBox.Over ? Ordered.Reason.TOO_LONG : Ordered.Reason.MISTAKE;
        Ordered ordered = new Ordered(book, closed.isPresent(), reason, office.now());
        return box.run(() -> OrdersOnlySheet.of(
                ordered,
                office.shop(),
                SheetDate.of(office, day).style(office.edges().paper().style())));
    }

    private static String said(RuntimeException mistake) {
        return mistake.getMessage() == null ? mistake.toString() : mistake.getMessage();
    }
}
