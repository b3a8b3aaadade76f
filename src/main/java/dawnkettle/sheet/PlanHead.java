package dawnkettle.sheet;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import java.util.ArrayList;
import java.util.List;

/** The head and foot that every sheet of a plan carries. */
final class PlanHead {
    private PlanHead() {}

    static Masthead of(DayPlan plan, Desk desk, String title, Word... foot) {
        Heading heading = plan.heading();
        String shop = desk.shop().house().name();
        Masthead.Name name = new Masthead.Name(
                title,
                desk.dates().full(heading.productionDate()),
                replaces(heading, desk),
                desk.first(Word.FACTS, shop, desk.dates().dayAndTime(heading.computedAt())),
                heading.mode() == Heading.Mode.FULL ? desk.say(Word.MODE_FULL) : "");
        return new Masthead(
                destroy(FallbackSheet.number(heading.productionDate()), desk),
                name,
                banner(heading.mode(), desk),
                foot(desk, foot));
    }

    /** Which sheets this one takes the place of: the afternoon's, and the one of the orders alone where that was printed. */
    private static String destroy(String fallback, Desk desk) {
        return desk.style()
                .tray()
                .ordersOnly()
                .map(number -> desk.say(Word.DESTROY_ORDERS_ONLY, number, fallback))
                .orElseGet(() -> desk.say(Word.DESTROY_FALLBACK, fallback));
    }

    private static String replaces(Heading heading, Desk desk) {
        if (heading.revisionOf().isEmpty()) return desk.say(Word.REVISION, heading.revision());
        return desk.say(Word.REPLACES, heading.revision(), heading.revisionOf().getAsInt());
    }

    private static String banner(Heading.Mode mode, Desk desk) {
        return switch (mode) {
            case FULL -> "";
            case NO_SEARCH -> desk.say(Word.BANNER_NO_SEARCH);
            case ORDERS_ONLY -> desk.say(Word.BANNER_ORDERS_ONLY);
            case LAST_WEEK -> desk.say(Word.BANNER_LAST_WEEK);
        };
    }

    private static List<String> foot(Desk desk, Word... foot) {
        List<String> lines = new ArrayList<>(List.of(desk.say(Word.FOOT_PLAN)));
        for (Word word : foot) lines.add(desk.say(word));
        return lines;
    }
}
