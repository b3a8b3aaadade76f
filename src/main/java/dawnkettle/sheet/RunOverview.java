package dawnkettle.sheet;

import dawnkettle.measure.Mass;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedRoute;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The whole day on one sheet for the wall: what is short or late first, the strip, the vans, the batches. */
final class RunOverview {
    private final Day day;
    private final Desk desk;

    RunOverview(Day day) {
        this.day = day;
        this.desk = day.desk();
    }

    Sheet sheet() {
        Masthead masthead = PlanHead.of(day.plan(), desk, desk.say(Word.RUN_TITLE), Word.FOOT_SOY);
        Desk.Draft draft =
                new Desk.Draft(Sheet.Kind.RUN, "run", desk.style().paper().landscape(), day.madeAt());
        return desk.sheet(draft, masthead, this::write);
    }

    private void write(Flow flow) {
        panel(Word.RUN_SHORT_TITLE, shortages(), true).ifPresent(flow::add);
        String summary = summary();
        if (!day.plan().operations().isEmpty()) {
            new Strip(day, flow).draw();
            summary = Words.join(" ", List.of(summary, desk.say(Word.RUN_STRIP_NOTE)));
        }
        flow.add(new Block.Panel("", List.of(summary), false));
        panel(Word.RUN_WARNINGS, PlanTalk.say(day.plan().warnings(), desk.words()), true)
                .ifPresent(flow::add);
        flow.add(new Block.Heading(desk.say(Word.RUN_ROUTES)), vans());
        flow.add(new Block.Heading(desk.say(Word.RUN_BATCHES)), batches());
        panel(Word.RUN_ADVICE, PlanTalk.say(day.plan().advice(), desk.words()), false)
                .ifPresent(flow::add);
        committed().ifPresent(flow::add);
    }

    private Optional<Block> panel(Word title, List<String> sentences, boolean boxed) {
        return sentences.isEmpty() ? Optional.empty() : Optional.of(new Block.Panel(desk.say(title), sentences, boxed));
    }

    private List<String> shortages() {
        return day.plan().shortages().stream()
                .map(one ->
                        desk.say(Word.RUN_SHORT, desk.productName(one.product()), one.packs(), desk.said(one.reason())))
                .toList();
    }

    private String summary() {
        List<PlannedBatch> batches = day.plan().batches();
        if (batches.isEmpty()) return desk.say(Word.RUN_NO_BATCHES);
        Mass beans = Mass.sum(batches.stream().map(PlannedBatch::beans).toList());
        String end = day.plan().operations().stream()
                .map(PlannedOperation::end)
                .max(Comparator.naturalOrder())
                .map(last -> desk.dates().timeFrom(last, day.date()))
                .orElse("-");
        return desk.say(Word.RUN_SUMMARY, batches.size(), desk.measures().mass(beans), end);
    }

    private Table vans() {
        List<Row> rows = day.plan().routes().stream()
                .sorted(Comparator.comparing(PlannedRoute::departs).thenComparing(PlannedRoute::route))
                .map(this::van)
                .toList();
        List<Table.Column> columns = columns(
                List.of(Word.RUN_ROUTE, Word.RUN_DEPARTS, Word.RUN_PACK_BY, Word.RUN_PACKED, Word.RUN_REMARK),
                90,
                45,
                45,
                45,
                48);
        return new Table(columns, 7.5, rows.isEmpty() ? List.of() : List.of(Table.Section.plain(rows)));
    }

    private Row van(PlannedRoute route) {
        boolean late = route.lateMinutes() > 0;
        Row row = Row.of(
                bold(route.route() + "  " + routeName(route.route())),
                plain(time(route.departs())),
                plain(time(route.packBy())),
                plain(time(route.packedBy())),
                late ? bold(desk.say(Word.LATE, route.lateMinutes())) : plain(desk.say(Word.RUN_ON_TIME)));
        return late ? row.looking(Row.Look.SHADED) : row;
    }

    private String routeName(String code) {
        return desk.shop().routes().stream()
                .filter(route -> route.code().equals(code))
                .map(route -> route.name())
                .findFirst()
                .orElse("");
    }

    private Table batches() {
        List<Row> rows = day.plan().batches().stream().map(this::batch).toList();
        List<Table.Column> columns = columns(
                List.of(
                        Word.RUN_BATCH,
                        Word.PICK_LOT,
                        Word.RUN_RECIPE,
                        Word.RUN_BEANS,
                        Word.RUN_DOSE,
                        Word.RUN_STARTS,
                        Word.RUN_ENDS,
                        Word.RUN_EXPECTED),
                20,
                34,
                40,
                52,
                58,
                22,
                22,
                25);
        return new Table(columns, 7.5, rows.isEmpty() ? List.of() : List.of(Table.Section.plain(rows)));
    }

    private Row batch(PlannedBatch batch) {
        List<PlannedOperation> steps = day.plan().operationsOf(batch.id());
        return Row.of(
                bold(batch.id()),
                plain(batch.lot().toString()),
                plain(day.recipe(batch).name()),
                plain(Words.join("", List.of(day.input(batch), tubs(batch)))),
                plain(day.dose(batch).orElse("")),
                plain(steps.isEmpty() ? "" : time(steps.get(0).start())),
                plain(steps.isEmpty() ? "" : time(steps.get(steps.size() - 1).end())),
                plain(desk.measures().mass(batch.expected())));
    }

    private static String tubs(PlannedBatch batch) {
        if (batch.soaks().isEmpty()) return "";
        return batch.soaks().stream().map(PlannedBatch.FromTub::tub).collect(Collectors.joining(" + ", ", ", ""));
    }

    private Optional<Block> committed() {
        List<Frozen> frozen = day.plan().heading().frozen();
        if (frozen.isEmpty()) return Optional.empty();
        String all = Words.join(
                ", ",
                frozen.stream()
                        .map(fact -> desk.say(said(fact.kind()), fact.id(), time(fact.at())))
                        .toList());
        return Optional.of(new Block.Panel("", List.of(desk.say(Word.RUN_COMMITTED, all)), false));
    }

    private static Word said(Frozen.Kind kind) {
        return switch (kind) {
            case TUB_FILLED -> Word.FROZEN_TUB;
            case BATCH_STARTED -> Word.FROZEN_BATCH;
            case LOT_LABELLED -> Word.FROZEN_LOT;
            case ROUTE_GONE -> Word.FROZEN_ROUTE;
            case BATCH_LOST -> Word.FROZEN_LOST;
        };
    }

    private List<Table.Column> columns(List<Word> words, double... shares) {
        List<Table.Column> columns = new ArrayList<>();
        for (int i = 0; i < shares.length; i++) columns.add(new Table.Column(desk.say(words.get(i)), shares[i]));
        return columns;
    }

    private String time(Instant instant) {
        return desk.dates().timeFrom(instant, day.date());
    }

    private static Cell plain(String text) {
        return Cell.text(text, Lettering.plain(11));
    }

    private static Cell bold(String text) {
        return Cell.text(text, Lettering.bold(11.5));
    }
}
