package dawnkettle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What must hold once a night is over and everything works again. */
record NightsEnd(Asked asked, DroppedByHand drops, Course course) {
    /**
     * How the night went.
     *
     * @param isLong whether something was wrong for so long that a step may be missing
     * @param paper troubles after each of which one sheet may be in doubt
     * @param labels troubles after each of which one group of labels may be in doubt
     */
    record Course(LocalDate day, boolean isLong, int paper, int labels) {}

    List<String> broken(List<String> taken) {
        List<String> broken = new ArrayList<>();
        steps(broken);
        orders(broken, taken);
        effects(broken);
        return broken;
    }

    /** Each step has come to its end; skipped only where the night was disturbed. */
    private void steps(List<String> broken) {
        List<String> rows = asked.rows(
                "SELECT step || ': ' || state || ' ' || note FROM step WHERE business_date = '" + course.day() + "'");
        for (String step : List.of(
                "soak call", "fallback", "close", "plan", "sheets", "backup", "dawn check", "labels", "summary")) {
            List<String> found =
                    rows.stream().filter(row -> row.startsWith(step + ": ")).toList();
            boolean isUnplanned = step.equals("labels") && rows.stream().noneMatch(row -> row.startsWith("plan: done"));
            boolean isOver = isUnplanned
                    || found.size() == 1
                            && (found.get(0).startsWith(step + ": done")
                                    || found.get(0).startsWith(step + ": skipped"));
            if (!isOver) broken.add("I6: " + step + " did not come to its end: " + found);
            boolean isNeeded = List.of("close", "plan", "sheets", "dawn check").contains(step) && !course.isLong();
            if (isNeeded && found.stream().noneMatch(row -> row.startsWith(step + ": done")))
                broken.add("I6: " + step + " was not done: " + found);
        }
    }

    private int count(String query) {
        return Integer.parseInt(asked.rows(query).get(0));
    }

    /** Each line of a taken file is in the plan in force with the packs it stands for, or late; each file is at its end. */
    private void orders(List<String> broken, List<String> taken) {
        for (DroppedByHand.Dropped file : drops.files)
            if (file.fate() == DroppedByHand.Fate.TAKEN && !taken.contains(file.name()))
                broken.add("I9: " + file.name() + " was not taken by the end");
        boolean isChecked = !asked.rows(
                        "SELECT 1 FROM step WHERE step = 'dawn check' AND state = 'done' AND business_date = '"
                                + course.day() + "'")
                .isEmpty();
        if (!isChecked || course.isLong()) return;
        for (Map.Entry<String, Integer> wanted : drops.wanted(taken).entrySet()) {
            String[] key = wanted.getKey().split("/");
            List<String> planned = asked.rows(
                    "SELECT packs FROM plan_order AS o WHERE order_number = '" + key[0]
                            + "' AND line = " + key[1] + " AND production_date = '" + course.day()
                            + "' AND revision = (SELECT max(revision) FROM plan AS p WHERE p.production_date = o.production_date)");
            boolean isRight = wanted.getValue() == 0
                    ? planned.isEmpty() || planned.equals(List.of("0"))
                    : planned.equals(List.of("" + wanted.getValue()));
            if (!isRight)
                broken.add("I2: " + wanted.getKey() + " stands for " + wanted.getValue() + " packs, the plan has "
                        + planned);
        }
    }

    /** Nothing is left on its way, and no more is in doubt than went wrong. */
    private void effects(List<String> broken) {
        // What was to come out while the clock was in doubt, and was cut off before it went, comes with a sure date
        // instead.
        asked.rows("SELECT key, state FROM effect WHERE state = 'sending'"
                        + " OR state = 'intended' AND key NOT LIKE '%, date not confirmed %'")
                .forEach(row -> broken.add("I3: left as " + row));
        asked.rows("SELECT message_id, state, note FROM outbox WHERE state <> 'sent' AND NOT (state = 'refused'"
                        + " AND attempts >= 8 AND changed_at - queued_at > 2 * 86400000)")
                .forEach(row -> broken.add("I5: mail left as " + row));
        int sheets = count(
                "SELECT count(*) FROM effect_event AS e JOIN effect AS f USING (key) WHERE f.kind = 'sheet' AND e.state = 'ambiguous'");
        if (sheets > course.paper())
            broken.add("I3: " + sheets + " sheets were in doubt after " + course.paper() + " troubles");
        int groups = count("SELECT count(*) FROM label_group WHERE outcome = 'uncertain'");
        if (groups > course.labels())
            broken.add("I3: " + groups + " groups of labels were in doubt after " + course.labels() + " troubles");
        asked.rows("""
                SELECT l.lot, l.product, l.cases + l.part_cases AS planned, (SELECT coalesce(sum(to_number - from_number + 1), 0)
                    FROM label_group AS g WHERE g.lot = l.lot AND g.product = l.product) AS noted FROM plan_label AS l
                WHERE l.revision = (SELECT max(revision) FROM plan AS p WHERE p.production_date = l.production_date)
                  AND noted < planned AND EXISTS (SELECT 1 FROM step WHERE step = 'labels' AND state = 'done'
                                                  AND business_date = l.production_date)""")
                .forEach(
                        row -> broken.add("I3: labels are done, and there are neither printed nor in doubt of " + row));
    }
}
