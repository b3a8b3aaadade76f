package dawnkettle.export;

import dawnkettle.plan.DayPlan;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The open form of a day's plan, held by {@code plan-1.schema.json}. Masses are whole grams, so that a plan in whole grams
 * is read back as it was written.
 */
public final class PlanJson {
    public static final String SCHEMA = "dawnkettle-plan/1";

    private static final String FILE = "plan.json";

    private PlanJson() {}

    /** The same plan gives the same text, byte for byte. */
    public static String write(DayPlan plan, Shop shop) {
        Row row = HeadingForm.write(new Row().text("schema", SCHEMA), plan.heading());
        book(row, plan, shop);
        room(row, plan);
        leaving(row, plan, shop);
        return PrettyJson.of(row.node());
    }

    private static void book(Row row, DayPlan plan, Shop shop) {
        row.list("orders", plan.orders(), BookForm::write)
                .list("demand", plan.demand(), BookForm::write)
                .list("recipes", plan.floor().recipes(), RecipeForm::write)
                .list("products", products(plan, shop), RecipeForm::write)
                .list("batches", plan.batches(), batch -> BatchForm.write(batch, shop));
    }

    private static void room(Row row, DayPlan plan) {
        ZoneId zone = plan.heading().zone();
        FloorForm floor = new FloorForm(zone);
        row.list("tubs", plan.floor().tubs(), FloorForm::write)
                .list("presence", plan.floor().presence(), floor::write)
                .list("soak", plan.soaks(), soak -> SoakForm.write(soak, zone))
                .list("stations", plan.floor().stations(), floor::write)
                .list("hands", plan.floor().hands(), floor::write)
                .list("changeovers", plan.floor().changeovers(), FloorForm::write)
                .list("operations", plan.operations(), floor::write);
        floor.missing(row, plan.floor().missing());
    }

    private static void leaving(Row row, DayPlan plan, Shop shop) {
        ZoneId zone = plan.heading().zone();
        row.list("stock", plan.stock(), BookForm::write)
                .list("allocation", plan.allocation(), one -> BookForm.write(one, shop))
                .list("routes", plan.routes(), route -> DispatchForm.write(route, zone))
                .list("labels", plan.labels(), DispatchForm::write)
                .list("shortages", plan.shortages(), BookForm::write)
                .texts("advice", plan.advice())
                .texts("warnings", plan.warnings())
                .object("quality", plan.quality(), quality -> DispatchForm.write(quality, zone));
    }

    private static List<Product> products(DayPlan plan, Shop shop) {
        Set<String> named = Stream.of(
                        plan.orders().stream().map(order -> order.line().product()),
                        plan.demand().stream().map(line -> line.product()),
                        plan.batches().stream()
                                .flatMap(batch -> batch.packs().stream().map(packs -> packs.product())),
                        plan.stock().stream().map(lot -> lot.product()),
                        plan.shortages().stream().map(shortage -> shortage.product()))
                .flatMap(codes -> codes)
                .collect(Collectors.toSet());
        return shop.products().stream()
                .filter(product -> named.contains(product.code()))
                .toList();
    }

    /**
     * The plan that was written.
     *
     * @param shop where the recipes' names and materials are, which the open form does not repeat
     * @throws BadFile where the text is not such a plan
     */
    public static DayPlan read(String text, Shop shop) {
        Fields plan = Fields.of(FILE, text);
        if (!plan.text("schema").equals(SCHEMA))
            throw plan.bad("schema", "\"" + plan.text("schema") + "\" is not read here", "write \"" + SCHEMA + "\"");
        try {
            return read(plan, shop);
        } catch (IllegalArgumentException e) {
            throw new BadFile(List.of(new Problem(
                    Place.of(FILE), "a value contradicts another: " + e.getMessage(), "plan the day again")));
        }
    }

    private static DayPlan read(Fields plan, Shop shop) {
        return new DayPlan(
                HeadingForm.read(plan),
                plan.list("orders", BookForm::readOrder),
                plan.list("demand", BookForm::readDemand),
                plan.list("batches", BatchForm::read),
                plan.list("soak", SoakForm::read),
                FloorForm.read(plan, shop),
                plan.list("operations", FloorForm::readOperation),
                plan.list("stock", BookForm::readStock),
                plan.list("allocation", BookForm::readAllocation),
                plan.list("routes", DispatchForm::readRoute),
                plan.list("labels", DispatchForm::readLabel),
                plan.list("shortages", BookForm::readShortage),
                plan.texts("advice"),
                plan.texts("warnings"),
                plan.find("quality", DispatchForm::readQuality));
    }
}
