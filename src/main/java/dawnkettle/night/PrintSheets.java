package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.IfCard;
import dawnkettle.sheet.IfSheet;
import dawnkettle.sheet.OrdersOnlySheet;
import dawnkettle.sheet.Printer;
import dawnkettle.sheet.Sheet;
import dawnkettle.sheet.SheetSet;
import dawnkettle.sheet.SheetStyle;
import dawnkettle.stock.LotCode;
import dawnkettle.store.Effect;
import dawnkettle.trouble.DeviceAway;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;

/** Prints the sheets of the plan in force; of a revision only those that changed. */
final class PrintSheets implements Work {
    /** Said of a set of sheets whose card of losses did not come out in time. */
    static final String WITHOUT_CARD = ", without the if... card";

    private final Office office;
    private final SheetEffects effects;
    private final Function<DayPlan, Optional<IfCard>> card;
    private final boolean hasCards;
    /** The day and revision of the last card, which took seconds to compute. */
    private String cardOf = "";

    private Optional<Sheet> made = Optional.empty();

    PrintSheets(Office office, SheetEffects effects) {
        this(office, effects, plan -> Optional.empty(), false);
    }

    /** @param card what then, if something of a plan is lost; empty where it was not computed */
    PrintSheets(Office office, SheetEffects effects, Function<DayPlan, Optional<IfCard>> card) {
        this(office, effects, card, true);
    }

    private PrintSheets(
            Office office, SheetEffects effects, Function<DayPlan, Optional<IfCard>> card, boolean hasCards) {
        this.hasCards = hasCards;
        this.office = office;
        this.effects = effects;
        this.card = card;
    }

    @Override
    public String run(LocalDate productionDate) {
        DayPlan plan = office.plan(productionDate).orElseThrow(() -> new NoPlan(productionDate));
        return print(plan, Optional.empty());
    }

    /** While the clock is in doubt: the plan in force, or the one that waits for the clock, on sheets that say so. */
    String printUnconfirmed(LocalDate productionDate) {
        DayPlan plan = office.planOnTheWall(productionDate).orElseThrow(() -> new NoPlan(productionDate));
        return print(plan, Optional.empty());
    }

    String print(DayPlan plan, Optional<DayPlan> before) {
        LocalDate day = plan.heading().productionDate();
        SheetDate date = SheetDate.of(office, day);
        List<Sheet> sheets = withCard(plan, changed(plan, before, this::planned));
        List<Sheet> records = changed(plan, before, this::records);
        if (!date.isInDoubt()) keep(plan, records);
        together(records).ifPresent(sheets::add);
        effects.print(date.set(set(plan)), day, sheets);
        return sheets.size() + " sheets" + (isCardMissing(plan) ? WITHOUT_CARD : "");
    }

    /** Sheets of the plan in force that hang with a date in doubt, and with no other. */
    List<String> leftInDoubt(DayPlan plan) {
        List<Effect> known = office.ledger().effects().of(plan.heading().productionDate());
        List<String> keys = known.stream()
                .filter(effect -> effect.state() == Effect.State.DONE || effect.state() == Effect.State.AMBIGUOUS)
                .map(Effect::key)
                .toList();
        return SheetDate.named(known, set(plan)).stream()
                .filter(name -> !keys.contains(key(plan, name)))
                .toList();
    }

    /** Those once more, now that the date is sure. */
    String printConfirmed(LocalDate productionDate) {
        DayPlan plan = office.plan(productionDate).orElseThrow(() -> new NoPlan(productionDate));
        List<String> left = leftInDoubt(plan);
        List<Sheet> again = sheets(plan).stream()
                .filter(sheet -> left.contains(sheet.name()))
                .toList();
        effects.print(set(plan), productionDate, again);
        return again.size() + " sheets of revision " + plan.heading().revision()
                + " printed again, now that the date is confirmed";
    }

    private static String set(DayPlan plan) {
        return plan.heading().productionDate() + " revision " + plan.heading().revision();
    }

    private static String heldSet(DayPlan plan, Set<LotCode> held) {
        return set(plan) + " held "
                + String.join(" ", held.stream().map(LotCode::toString).sorted().toList());
    }

    /** By which the ledger knows a sheet of a plan. */
    static String key(DayPlan plan, String sheet) {
        return SheetEffects.key(set(plan), sheet);
    }

    /** The same of one that was printed again because lots are held. */
    static String heldKey(DayPlan plan, Set<LotCode> held, String sheet) {
        return SheetEffects.key(heldSet(plan, held), sheet);
    }

    /** Pick and route sheets that say otherwise now that lots are held, marked; how many. */
    int printHeld(DayPlan plan, Set<LotCode> news) {
        Set<LotCode> held = new Gate(office).heldLots(Optional.of(plan));
        Set<LotCode> before = new TreeSet<>(held);
        before.removeAll(news);
        SheetSet.Known then = new SheetSet.Known(plan, before);
        SheetSet.Known now = new SheetSet.Known(plan, held);
        Map<String, String> old = texts(SheetSet.of(then, Optional.empty(), office.shop(), style(plan)));
        Map<String, String> alike = texts(SheetSet.of(now, Optional.empty(), office.shop(), style(plan)));
        List<Sheet> again = SheetSet.of(now, Optional.of(then), office.shop(), style(plan)).stream()
                .filter(sheet -> sheet.kind() == Sheet.Kind.PICK || sheet.kind() == Sheet.Kind.ROUTE)
                .filter(sheet -> !alike.get(sheet.name()).equals(old.get(sheet.name())))
                .toList();
        LocalDate day = plan.heading().productionDate();
        effects.print(SheetDate.of(office, day).set(heldSet(plan, news)), day, again);
        return again.size();
    }

    /** The records of the batches are kept whether they come out on paper or not. */
    private void keep(DayPlan plan, List<Sheet> records) {
        Printer folder = office.edges().paper().records().apply(plan.heading().productionDate());
        int revision = plan.heading().revision();
        try {
            records.forEach(record -> folder.print(record.named(record.name() + "-r" + revision)));
        } catch (DeviceAway diskIsFull) {
            office.tell("batch records of " + plan.heading().productionDate() + " lie on paper alone: "
                    + diskIsFull.getMessage());
        }
    }

    private static Optional<Sheet> together(List<Sheet> records) {
        return records.isEmpty() ? Optional.empty() : Optional.of(Sheet.together("records", records));
    }

    /** Sheets that differ in more than the heading that every sheet of a revision carries. */
    private List<Sheet> changed(DayPlan plan, Optional<DayPlan> before, Function<DayPlan, List<Sheet>> sheets) {
        if (before.isEmpty()) return sheets.apply(plan);
        Map<String, String> old = texts(sheets.apply(before.get()));
        Map<String, String> alike =
                texts(sheets.apply(plan.withHeading(before.get().heading())));
        return sheets.apply(plan).stream()
                .filter(sheet -> !alike.get(sheet.name()).equals(old.get(sheet.name())))
                .toList();
    }

    private static Map<String, String> texts(List<Sheet> sheets) {
        Map<String, String> texts = new HashMap<>();
        sheets.forEach(sheet -> texts.put(sheet.name(), sheet.asText()));
        return texts;
    }

    /** All that is printed of a plan. */
    List<Sheet> sheets(DayPlan plan) {
        return Stream.concat(withCard(plan, planned(plan)).stream(), together(records(plan)).stream())
                .toList();
    }

    /** The card lies behind the run sheets, of which it is a part on the wall. */
    private List<Sheet> withCard(DayPlan plan, List<Sheet> planned) {
        List<Sheet> sheets = new ArrayList<>(planned);
        int behind = 0;
        for (int i = 0; i < sheets.size(); i++) if (sheets.get(i).kind() == Sheet.Kind.RUN) behind = i + 1;
        Optional<Sheet> sheet = card(plan);
        if (sheet.isPresent()) sheets.add(behind, sheet.get());
        return sheets;
    }

    /** Whether it was wanted and did not come out. */
    private boolean isCardMissing(DayPlan plan) {
        return hasCards && style(plan).settings().hasIfCard() && card(plan).isEmpty();
    }

    /** A card that can't be drawn must not keep back the sheets that the morning needs. */
    private Optional<Sheet> card(DayPlan plan) {
        String which = set(plan) + SheetDate.of(office, plan.heading().productionDate());
        if (!which.equals(cardOf)) made = made(plan);
        cardOf = which;
        return made;
    }

    private Optional<Sheet> made(DayPlan plan) {
        if (!style(plan).settings().hasIfCard()) return Optional.empty();
        try {
            return card.apply(plan).map(known -> IfSheet.of(known, plan, office.shop(), style(plan)));
        } catch (RuntimeException mistake) {
            office.tell("no if... card of " + plan.heading().productionDate() + ": " + mistake.getMessage());
            return Optional.empty();
        }
    }

    /** The plan's sheets without the card of losses. */
    List<Sheet> planned(DayPlan plan) {
        Set<LotCode> held = new Gate(office).heldLots(Optional.of(plan));
        return SheetSet.of(
                new SheetSet.Known(plan, held),
                replaced(plan).map(old -> new SheetSet.Known(old, Set.of())),
                office.shop(),
                style(plan));
    }

    /** The plan that this one replaces, whose sheets hang on the wall. */
    private Optional<DayPlan> replaced(DayPlan plan) {
        OptionalInt revision = plan.heading().revisionOf();
        if (revision.isEmpty()) return Optional.empty();
        return office.ledger()
                .plans()
                .find(plan.heading().productionDate(), revision.getAsInt())
                .map(kept -> office.edges().plans().read(kept.json()));
    }

    private List<Sheet> records(DayPlan plan) {
        return SheetSet.records(plan, office.shop(), style(plan));
    }

    /** What takes the place of the orders alone says so. */
    private SheetStyle style(DayPlan plan) {
        LocalDate day = plan.heading().productionDate();
        SheetStyle style =
                SheetDate.of(office, day).style(office.edges().paper().style());
        return StandIn.hasPrinted(office, day) ? style.inPlaceOf(OrdersOnlySheet.number(day)) : style;
    }
}
