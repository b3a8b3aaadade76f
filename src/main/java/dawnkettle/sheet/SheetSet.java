package dawnkettle.sheet;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.shop.Shop;
import dawnkettle.shop.WorkStation;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** All the sheets of a plan, in the order in which they are wanted. */
public final class SheetSet {
    private final Day day;
    private final Set<String> names = new HashSet<>();

    private SheetSet(Day day) {
        this.day = day;
    }

    /** Soak, run overview, a run sheet a group of stations, pick, and a route sheet a van. */
    public static List<Sheet> of(DayPlan plan, Shop shop, SheetStyle style) {
        return new SheetSet(new Day(plan, new Desk(shop, style))).sheets();
    }

    /** The same for a plan that replaces another: what the other's sheets did not say is marked. */
    public static List<Sheet> of(DayPlan plan, DayPlan replaced, Shop shop, SheetStyle style) {
        Desk desk = new Desk(shop, style);
        new SheetSet(new Day(replaced, desk)).sheets();
        return new SheetSet(new Day(plan, desk.next())).sheets();
    }

    /** The records of a plan, a batch each. */
    public static List<Sheet> records(DayPlan plan, Shop shop, SheetStyle style) {
        Day day = new Day(plan, new Desk(shop, style));
        return plan.batches().stream()
                .map(batch -> new BatchRecord(day, batch).sheet())
                .toList();
    }

    private List<Sheet> sheets() {
        List<Sheet> sheets = new ArrayList<>();
        sheets.add(SoakSheet.of(day.plan(), day.desk()));
        sheets.add(new RunOverview(day).sheet());
        groups().forEach((group, operations) ->
                sheets.add(new StationSheet(day, group, operations).sheet(name("run", group))));
        List<Load> loads = Load.of(day);
        sheets.add(new PickSheet(day, loads).sheet());
        for (Load load : loads)
            if (!load.stops().isEmpty()) sheets.add(new RouteSheet(day, load).sheet(name("route", load.route())));
        for (Load load : loads)
            if (!load.served().isEmpty())
                sheets.add(new DeliveryNotes(day, load).sheet(name("delivery", load.route())));
        sheets.add(new FreeSheet(day).sheet());
        return sheets;
    }

    /** Operations by the heading of the run sheet on which their station stands, in the owner's order. */
    private Map<String, List<PlannedOperation>> groups() {
        List<String> written = day.desk().shop().floor().stations().stream()
                .map(WorkStation::group)
                .distinct()
                .toList();
        Map<String, List<PlannedOperation>> groups = new LinkedHashMap<>();
        day.inOrder().stream()
                .sorted(Comparator.comparingInt(operation -> place(written, group(operation))))
                .forEach(operation -> groups.computeIfAbsent(group(operation), group -> new ArrayList<>())
                        .add(operation));
        return groups;
    }

    private static int place(List<String> written, String group) {
        return written.contains(group) ? written.indexOf(group) : written.size();
    }

    private String group(PlannedOperation operation) {
        return day.station(operation.station()).map(WorkStation::group).orElse(operation.stage());
    }

    /** A file name from words: letters and digits joined by hyphens, and a number behind it where it is taken. */
    private String name(String kind, String words) {
        String stem = words.replaceAll("[^A-Za-z0-9]+", "-").replaceAll("^-|-$", "");
        if (kind.equals("run")) stem = stem.toLowerCase(Locale.ROOT).replace("-and-", "-");
        String name = stem.isEmpty() ? kind + "-1" : kind + "-" + stem;
        for (int i = 2; !names.add(name); i++) name = kind + "-" + (stem.isEmpty() ? "" : stem + "-") + i;
        return name;
    }
}
