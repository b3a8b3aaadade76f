package dawnkettle;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * What must hold at every moment of a night, by plain SQL over the ledger's file and by what devices and people outside
 * counted; it knows none of the service's own conservation laws.
 */
final class NightLaws {
    /** Tables to which rows are only ever added, with the columns that never change. */
    private static final Map<String, String> ONLY_ADDED = new TreeMap<>(Map.ofEntries(
            Map.entry("order_line", "*"),
            Map.entry("amendment", "*"),
            Map.entry("dropped_file", "*"),
            Map.entry("book_close", "*"),
            Map.entry("book_close_line", "*"),
            Map.entry("soak_call", "*"),
            Map.entry("soak_call_tub", "*"),
            Map.entry("plan", "production_date, revision, computed_at, mode, length(json)"),
            Map.entry("plan_order", "*"),
            Map.entry("plan_pack", "*"),
            Map.entry("plan_label", "*"),
            Map.entry("plan_allocation", "*"),
            Map.entry("step_event", "*"),
            Map.entry("effect_event", "*"),
            Map.entry("label_group", "*"),
            Map.entry("label_in_flight", "seq, lot, product, from_number, to_number, at"),
            Map.entry("record", "*"),
            Map.entry("mail_in", "*"),
            Map.entry("chain", "*"),
            Map.entry("chain_part", "*"),
            Map.entry("outbox", "message_id, subject, length(message), queued_at")));

    private final Asked asked;
    private final FaultyDoors doors;
    private final DroppedByHand drops;
    private final Path folder;
    private final LocalDate day;
    private final Map<String, Set<String>> seen = new HashMap<>();
    private final List<String> broken = new ArrayList<>();
    private boolean clockWentBack;

    NightLaws(Asked asked, FaultyDoors doors, DroppedByHand drops, Path folder, LocalDate day) {
        this.asked = asked;
        this.doors = doors;
        this.drops = drops;
        this.folder = folder;
        this.day = day;
    }

    void clockWentBack() {
        clockWentBack = true;
    }

    /** After every step: what is broken, each by its law's number. */
    List<String> broken() throws IOException {
        broken.clear();
        broken.addAll(doors.complaints);
        orders();
        plans();
        labels();
        sheets();
        mails();
        steps();
        onlyAdded();
        files();
        return List.copyOf(broken);
    }

    private void none(String law, String query) {
        asked.rows(query).forEach(row -> broken.add(law + ": " + row));
    }

    List<String> taken() throws IOException {
        return in("taken");
    }

    private List<String> in(String end) throws IOException {
        Path place = end.isEmpty() ? folder : folder.resolve(end);
        if (!Files.isDirectory(place)) return List.of();
        try (Stream<Path> files = Files.list(place)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".csv"))
                    .sorted()
                    .toList();
        }
    }

    /** I1: what was acknowledged is in the ledger, and nothing else is. */
    private void orders() throws IOException {
        Set<String> rows = new TreeSet<>(
                asked.rows(
                        "SELECT order_number, line, customer, product, packs, delivery_date FROM order_line WHERE source = 'file'"));
        List<String> taken = taken();
        Set<String> dropped = new HashSet<>();
        for (DroppedByHand.Dropped file : drops.files) {
            for (DroppedByHand.Line line : file.lines()) {
                dropped.add(line.row());
                if (taken.contains(file.name()) && !rows.contains(line.row()))
                    broken.add("I1: " + line.row() + " of taken " + file.name() + " is not in the ledger");
            }
            long times = asked.rows("SELECT 1 FROM amendment WHERE origin LIKE '" + file.name() + ":%'")
                    .size();
            if (taken.contains(file.name()) && times != file.amended().size())
                broken.add("I1: " + file.name() + " has " + file.amended().size() + " amendments, the ledger " + times);
        }
        Set<String> first = new HashSet<>();
        for (String row :
                asked.rows("SELECT order_number, line, customer, product, packs, delivery_date FROM order_line"
                        + " WHERE source = 'file' ORDER BY seq")) {
            String key = row.substring(0, row.indexOf(' ', row.indexOf(' ') + 1));
            if (first.add(key) && !dropped.contains(row)) broken.add("I1: nobody dropped " + row);
        }
        none("I1 twice in the ledger", """
                SELECT order_number, line, product, count(*) FROM order_line
                GROUP BY order_number, line, customer, product, packs, delivery_date HAVING count(*) > 1""");
    }

    /** I2: ordered is planned and declined, line by line and product by product; I4: lots have parents. */
    private void plans() {
        none("I2 closed and not in the plan", """
                SELECT c.order_number, c.line FROM book_close_line AS c
                WHERE EXISTS (SELECT 1 FROM plan WHERE plan.production_date = c.production_date)
                  AND NOT EXISTS (SELECT 1 FROM plan_order AS o WHERE o.order_number = c.order_number AND o.line = c.line
                                                                  AND o.production_date = c.production_date)""");
        none("I2 declined without a reason", """
                SELECT order_number, line FROM plan_order WHERE planned_packs < packs AND trim(reason) = ''""");
        none("I2 planned is not given", """
                SELECT o.production_date, o.revision, o.product, sum(o.planned_packs) AS planned,
                       (SELECT coalesce(sum(a.packs), 0) FROM plan_allocation AS a
                        WHERE a.production_date = o.production_date AND a.revision = o.revision
                          AND a.product = o.product) AS given
                FROM plan_order AS o GROUP BY 1, 2, 3 HAVING planned <> given""");
        none("I2 closed twice", "SELECT order_number, line FROM book_close_line GROUP BY 1, 2 HAVING count(*) > 1");
        none("I2 the close lost lines", """
                SELECT production_date, line_count FROM book_close AS b WHERE line_count <>
                    (SELECT count(*) FROM book_close_line AS l WHERE l.production_date = b.production_date)""");
        none("I4 made of nothing", """
                SELECT DISTINCT l.lot FROM plan_label AS l
                WHERE NOT EXISTS (SELECT 1 FROM plan_batch_tub AS t WHERE t.lot = l.lot AND t.revision = l.revision)
                  AND NOT EXISTS (SELECT 1 FROM plan_feed AS f WHERE f.into_lot = l.lot AND f.revision = l.revision)""");
        none("I4 beans of a lot are not its tubs'", """
                SELECT b.lot, b.revision, b.beans_mg FROM plan_batch AS b WHERE b.beans_mg <>
                    (SELECT coalesce(sum(t.beans_mg), 0) FROM plan_batch_tub AS t
                     WHERE t.production_date = b.production_date AND t.revision = b.revision AND t.lot = b.lot)""");
        none("I4 a lot gives away more than it has", """
                SELECT p.lot, p.product, p.revision, p.packs FROM plan_pack AS p WHERE p.packs <
                    (SELECT coalesce(sum(a.packs), 0) FROM plan_allocation AS a WHERE a.production_date = p.production_date
                        AND a.revision = p.revision AND a.lot = p.lot AND a.product = p.product AND a.from_stock = 0)""");
    }

    /** I3: labels counted at the printer are those confirmed and some of those in doubt; none twice. I7: their dates. */
    private void labels() {
        Map<String, BitSet> sure = numbers("confirmed");
        Map<String, BitSet> doubtful = numbers("uncertain");
        Map<String, BitSet> flying = new HashMap<>();
        for (String row :
                asked.rows("SELECT lot, product, from_number, to_number FROM label_in_flight WHERE landed_at IS NULL"))
            add(flying, row);
        Map<String, Integer> most = new HashMap<>();
        for (String row :
                asked.rows("SELECT lot, product, max(cases + part_cases) FROM plan_label GROUP BY lot, product"))
            most.put(row.substring(0, row.lastIndexOf(' ')), Integer.parseInt(row.substring(row.lastIndexOf(' ') + 1)));
        Map<String, Set<Integer>> out = new HashMap<>();
        for (FaultyDoors.Out label : doors.labels) {
            dates(label);
            if (label.copy()) continue;
            String key = label.lot() + " " + label.product();
            if (!out.computeIfAbsent(key, all -> new HashSet<>()).add(label.number()))
                broken.add("I3: label " + label.number() + " of " + key + " came out twice, unmarked");
            if (label.number() > most.getOrDefault(key, 0))
                broken.add("I3: label " + label.number() + " of " + key + " came out, planned are " + most.get(key));
            boolean isKnown = has(sure, key, label) || has(doubtful, key, label) || has(flying, key, label);
            if (!isKnown)
                broken.add("I3: label " + label.number() + " of " + key + " came out and the journal has it not");
        }
        sure.forEach((key, numbers) -> numbers.stream()
                .filter(n -> !out.getOrDefault(key, Set.of()).contains(n))
                .forEach(n -> broken.add("I3: label " + n + " of " + key + " is confirmed and never came out")));
        none("I3 labels of a lot without a case in any plan", """
                SELECT lot, product FROM label_group AS g WHERE NOT EXISTS
                    (SELECT 1 FROM plan_label AS p WHERE p.lot = g.lot AND p.product = g.product)""");
        none("I3 a done run is not whole", """
                SELECT e.key, p.cases + p.part_cases FROM effect AS e JOIN plan_label AS p ON e.key = 'label/' || p.lot || '/' || p.product
                WHERE e.state = 'done' AND p.revision = (SELECT max(revision) FROM plan WHERE production_date = p.production_date)
                  AND p.cases + p.part_cases <> (SELECT coalesce(sum(to_number - from_number + 1), 0) FROM label_group AS g
                      WHERE g.lot = p.lot AND g.product = p.product AND g.outcome = 'confirmed')""");
    }

    private static boolean has(Map<String, BitSet> numbers, String key, FaultyDoors.Out label) {
        return numbers.containsKey(key) && numbers.get(key).get(label.number());
    }

    private Map<String, BitSet> numbers(String outcome) {
        Map<String, BitSet> numbers = new HashMap<>();
        for (String row : asked.rows(
                "SELECT lot, product, from_number, to_number FROM label_group WHERE outcome = '" + outcome + "'"))
            add(numbers, row);
        return numbers;
    }

    private static void add(Map<String, BitSet> numbers, String row) {
        String[] cells = row.split(" ");
        numbers.computeIfAbsent(cells[0] + " " + cells[1], all -> new BitSet())
                .set(Integer.parseInt(cells[2]), Integer.parseInt(cells[3]) + 1);
    }

    private void dates(FaultyDoors.Out label) {
        String packed = DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT).format(day);
        String best = DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT)
                .format(day.plusDays(FewOrders.SHELF_LIFE_DAYS.get(label.product())));
        String says = label.words().elements().map(Object::toString).orElse("");
        if (!label.lot().startsWith(packed)) broken.add("I7: lot " + label.lot() + " is not of " + day);
        if (!says.isEmpty() && (!says.contains("(15)" + best) || !says.contains("(10)" + label.lot())))
            broken.add("I7: label of " + label.lot() + " says " + says + ", it must be best before " + best);
    }

    /** I3 for paper: what is done came out, and what came out more than once says so. */
    private void sheets() {
        for (String row : asked.rows("SELECT state, key FROM effect WHERE kind = 'sheet'")) {
            String key = row.substring(row.indexOf(' ') + 1);
            boolean isDone = row.startsWith("done ");
            if (isDone && !doors.sheets.containsKey(key) && !doors.liedAbout.contains(key))
                broken.add("I3: " + key + " is done and never came out");
        }
        doors.sheets.forEach((key, marks) -> {
            for (int i = 1; i < marks.size(); i++)
                if (!marks.get(i)) broken.add("I3: " + key + " came out again, unmarked");
        });
    }

    /** I5: every mail that arrived was intended, what is sent arrived, and a second one says so under the same id. */
    private void mails() {
        Set<String> intended = new HashSet<>(asked.rows("SELECT message_id FROM outbox"));
        Map<String, FaultyDoors.Received> first = new HashMap<>();
        for (FaultyDoors.Received mail : doors.mails) {
            if (!intended.contains(mail.id())) broken.add("I5: mail " + mail.id() + " was never intended");
            FaultyDoors.Received before = first.putIfAbsent(mail.id(), mail);
            if (before != null && !mail.saysAgain()) broken.add("I5: mail " + mail.id() + " arrived again, unmarked");
            if (before != null && before.bodyHash() != mail.bodyHash())
                broken.add("I5: mail " + mail.id() + " arrived again with other words");
        }
        for (String id : asked.rows("SELECT message_id FROM outbox WHERE state = 'sent'"))
            if (!first.containsKey(id)) broken.add("I5: mail " + id + " is sent and never arrived");
    }

    /** I6: one done a step and business date, in their order, nothing dated before what came before it. */
    private void steps() {
        none("I6 done twice", """
                SELECT step, business_date, revision, count(*) FROM step_event WHERE state = 'done'
                GROUP BY 1, 2, 3 HAVING count(*) > 1""");
        none("I6 out of order", """
                SELECT later.step, later.business_date FROM step_event AS later JOIN
                    (VALUES ('plan', 'close'), ('sheets', 'plan'), ('dawn check', 'plan'), ('labels', 'plan')) AS v
                    ON v.column1 = later.step
                WHERE later.state = 'done' AND NOT EXISTS
                    (SELECT 1 FROM step_event AS earlier WHERE earlier.step = v.column2 AND earlier.state = 'done'
                     AND earlier.business_date = later.business_date AND earlier.seq < later.seq)""");
        summary();
        none("I6 state and history differ", """
                SELECT s.step, s.business_date, s.state FROM step AS s WHERE s.state <>
                    (SELECT e.state FROM step_event AS e WHERE e.step = s.step AND e.business_date = s.business_date
                     AND e.revision = s.revision ORDER BY seq DESC LIMIT 1)""");
        none("I6 state and history differ", """
                SELECT f.key, f.state FROM effect AS f WHERE f.state <>
                    (SELECT e.state FROM effect_event AS e WHERE e.key = f.key ORDER BY seq DESC LIMIT 1)""");
        if (!clockWentBack) none("I6 dated before its predecessor", """
                    SELECT later.step, later.business_date FROM step_event AS later JOIN step_event AS earlier
                        ON earlier.seq = later.seq - 1 WHERE later.at < earlier.at""");
    }

    /** The morning's mail comes where there is no plan as well, and then says so. */
    private void summary() {
        none("I6 a summary of no plan does not say so, or one of a plan says so", """
                SELECT e.business_date, e.note FROM step_event AS e
                WHERE e.step = 'summary' AND e.state = 'done' AND (instr(e.note, 'no plan') > 0) = EXISTS
                    (SELECT 1 FROM step_event AS p WHERE p.step = 'plan' AND p.state = 'done'
                     AND p.business_date = e.business_date AND p.seq < e.seq)""");
    }

    /** I8: what was written stays as it was. */
    private void onlyAdded() {
        ONLY_ADDED.forEach((table, columns) -> {
            Set<String> now = new HashSet<>(asked.rows("SELECT " + columns + " FROM " + table));
            Set<String> before = seen.getOrDefault(table, Set.of());
            for (String row : before)
                if (!now.contains(row)) broken.add("I8: " + table + " has lost or changed " + row);
            seen.put(table, now);
        });
    }

    /** I9: every file is in exactly one place, and not at the wrong end. */
    private void files() throws IOException {
        Map<String, List<String>> places = new HashMap<>();
        for (String place : List.of("", "reading", "taken", "refused"))
            for (String name : in(place))
                places.computeIfAbsent(name, all -> new ArrayList<>()).add(place);
        for (DroppedByHand.Dropped file : drops.files) {
            List<String> found = places.getOrDefault(file.name(), List.of());
            if (found.size() != 1) broken.add("I9: " + file.name() + " is in " + found);
            boolean isWrong = found.contains(file.fate() == DroppedByHand.Fate.TAKEN ? "refused" : "taken");
            if (isWrong) broken.add("I9: " + file.name() + " ended in " + found + ", not " + file.fate());
        }
    }
}
