package dawnkettle.mail;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading.Mode;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.Shortage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Whether all is well, in as few words as a subject line holds.
 *
 * @param faults what is not well, the worst first; empty where all is
 * @param questions what waits for an answer
 */
record Verdict(List<String> faults, int questions) {
    private static final int SHOWN = 3;

    Verdict {
        faults = List.copyOf(faults);
    }

    static Verdict of(DayPlan plan, NightReport report) {
        List<String> faults = new ArrayList<>();
        add(faults, plan.lateRoutes(), "route late", "routes late");
        long missing =
                shortPacks(plan).values().stream().mapToLong(Long::longValue).sum();
        add(faults, missing, "pack short", "packs short");
        if (plan.heading().mode() != Mode.FULL) faults.add(mode(plan.heading().mode()));
        add(faults, report.labels().failed().size(), "label group not printed", "label groups not printed");
        add(faults, report.labels().uncertain().size(), "label group to count", "label groups to count");
        add(faults, report.sheets().failed().size(), "sheet not printed", "sheets not printed");
        add(faults, report.orders().refused().size(), "order refused", "orders refused");
        return new Verdict(faults, report.notes().questions().size());
    }

    /** Packs short by product: what customers do not get, or what the plan names as short where that is more. */
    static Map<String, Long> shortPacks(DayPlan plan) {
        Map<String, Long> declined = new TreeMap<>();
        for (PlannedOrder order : plan.orders())
            declined.merge(order.line().product(), (long) order.declinedPacks(), Long::sum);
        Map<String, Long> all = new TreeMap<>();
        for (Shortage shortage : plan.shortages()) all.merge(shortage.product(), (long) shortage.packs(), Long::sum);
        declined.forEach((product, packs) -> all.merge(product, packs, Math::max));
        all.values().removeIf(packs -> packs == 0);
        return all;
    }

    static String mode(Mode mode) {
        return switch (mode) {
            case FULL -> "full plan";
            case NO_SEARCH -> "plan without search";
            case ORDERS_ONLY -> "orders only, no plan";
            case LAST_WEEK -> "last week's day, no plan";
        };
    }

    boolean isWell() {
        return faults.isEmpty();
    }

    /** As "2 routes late, 12 packs short" or "all well". */
    String words() {
        List<String> words = new ArrayList<>(faults.subList(0, Math.min(SHOWN, faults.size())));
        if (faults.size() > SHOWN) words.add((faults.size() - SHOWN) + " more");
        if (isWell()) words.add("all well");
        if (questions > 0) words.add(Figures.count(questions, "question", "questions"));
        return String.join(", ", words);
    }

    private static void add(List<String> faults, long count, String one, String many) {
        if (count > 0) faults.add(Figures.count(count, one, many));
    }
}
