package dawnkettle.sheet;

import dawnkettle.plan.Allocation;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedRoute;
import java.util.ArrayList;
import java.util.List;

/** What the driver takes along: stop by stop who gets what, without prices, with a line to sign. */
final class RouteSheet {
    private final Day day;
    private final Desk desk;
    private final Load load;

    RouteSheet(Day day, Load load) {
        this.day = day;
        this.desk = day.desk();
        this.load = load;
    }

    Sheet sheet(String name) {
        String title = desk.say(Word.ROUTE_TITLE, load.route(), load.name(desk));
        Masthead masthead = PlanHead.of(day.plan(), desk, title, Word.FOOT_SOY, Word.FOOT_DATES, Word.FOOT_CHILL);
        Desk.Draft draft = new Desk.Draft(Sheet.Kind.ROUTE, name, desk.style().paper(), day.madeAt());
        return desk.sheet(draft, masthead, this::write);
    }

    private void write(Flow flow) {
        List<String> sentences = new ArrayList<>();
        if (load.lateMinutes() > 0) sentences.add(desk.say(Word.ROUTE_LATE, load.lateMinutes()));
        String leaves = load.planned()
                .map(PlannedRoute::departs)
                .map(desk.dates()::dayAndTime)
                .orElse(desk.dates().brief(load.day()));
        sentences.add(desk.say(Word.ROUTE_LEAVES, leaves, load.served().size(), load.boxes(desk), load.packs()));
        flow.add(new Block.Panel("", sentences, load.lateMinutes() > 0));
        flow.add(new Table(List.of(new Table.Column("", 1)), 0, List.of(Table.Section.plain(List.of(loaded())))));
        flow.add(new Block.Gap(2));
        flow.add(new Table(columns(), 6.4, load.stops().stream().map(this::stop).toList()).dense());
    }

    private Row loaded() {
        return Row.of(Cell.blanks(List.of(
                List.of(desk.say(Word.ROUTE_LOADED), desk.say(Word.AT), desk.say(Word.ROUTE_VAN_TEMPERATURE)))));
    }

    private List<Table.Column> columns() {
        return List.of(
                new Table.Column(desk.say(Word.PICK_PRODUCT), 70),
                new Table.Column(desk.say(Word.PICK_PACKS), 18),
                new Table.Column(desk.say(Word.PICK_CASES), 36),
                new Table.Column(desk.say(Word.PICK_LOT), 28),
                new Table.Column(desk.say(Word.PICK_BEST_BEFORE), 26),
                new Table.Column(desk.say(Word.ROUTE_GIVEN), 14));
    }

    private Table.Section stop(Load.Stop stop) {
        String name = desk.first(Word.ROUTE_STOP, PickSheet.stopNumber(stop), desk.customerName(stop.customer()));
        String address = desk.shop()
                .findCustomer(stop.customer())
                .map(customer -> customer.address())
                .orElse("");
        Row head =
                Row.across(Row.Look.SHADED, Cell.stack(Cell.Phrase.bold(12.5, name), Cell.Phrase.plain(10.5, address)));
        Row again = Row.shaded(12, desk.say(Word.CONTINUED, name));
        List<Row> rows = new ArrayList<>();
        stop.lines().forEach(line -> rows.add(line(line)));
        stop.shortOrders().forEach(order -> rows.add(shortOrder(order)));
        rows.add(signature());
        return new Table.Section(List.of(head), List.of(again), rows, rows.size() <= PickSheet.KEPT_ROWS);
    }

    private Row line(Allocation line) {
        return Row.of(
                Cell.text(desk.productName(line.product()), Lettering.plain(11.5)),
                Cell.text(Integer.toString(line.packs()), Lettering.bold(14)),
                Cell.text(desk.cases(desk.cases(line.product(), line.packs())), Lettering.plain(11)),
                Cell.text(line.lot().toString(), Lettering.plain(10.5)),
                Cell.text(
                        day.bestBefore(line.lot(), line.product())
                                .map(desk.dates()::onLabel)
                                .orElse(""),
                        Lettering.plain(10.5)),
                Cell.tick("", Lettering.plain(11)).small());
    }

    private Row shortOrder(PlannedOrder order) {
        String text = desk.shortOf(Word.ROUTE_SHORT, order);
        return Row.across(Row.Look.PLAIN, Cell.text(text, Lettering.bold(11)));
    }

    private Row signature() {
        return Row.across(
                Row.Look.PLAIN,
                new Cell.Blanks(
                        List.of(List.of(desk.say(Word.ROUTE_SIGN), desk.say(Word.AT), desk.say(Word.ROUTE_BACK))),
                        false,
                        9));
    }
}
