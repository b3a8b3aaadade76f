package dawnkettle.intake;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Material;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Reads a folder of past weeks into facts, or says every problem of every file.
 *
 * <p>The files say days, a ledger wants instants: things came in at 10:00, were soaked on the evening before their making
 * day, packed at 11:00, delivered when the van left, and so on. A fact's origin is its file and what it is about, not its
 * line, so that rows may be added in between and the whole read again.
 */
public final class ReadHistory {
    private static final LocalTime RECEIVED = LocalTime.of(10, 0);
    private static final LocalTime SOAKED = LocalTime.of(18, 0);
    private static final LocalTime YIELDED = LocalTime.of(10, 30);
    private static final LocalTime PACKED = LocalTime.of(11, 0);
    private static final LocalTime SOLD = LocalTime.of(16, 0);
    private static final LocalTime COUNTED = LocalTime.of(17, 0);
    private static final LocalTime CAME_LATE = LocalTime.of(18, 0);

    private final Path folder;
    private final Shop shop;
    private final List<Problem> problems = new ArrayList<>();
    private final List<Recorded> facts = new ArrayList<>();
    private final Set<String> origins = new HashSet<>();
    private final Map<String, Material> bought = new HashMap<>();
    private final Set<LotCode> made = new HashSet<>();
    private final Set<String> filled = new HashSet<>();

    private ReadHistory(Path folder, Shop shop) {
        this.folder = folder;
        this.shop = shop;
    }

    /** @throws BadFile with every problem of every file */
    public static List<Recorded> from(Path folder, Shop shop) {
        if (!Files.isDirectory(folder))
            throw new BadFile(
                    List.of(new Problem(Place.of(folder.toString()), "there is no such folder", "name another")));
        return new ReadHistory(folder, shop).read();
    }

    private List<Recorded> read() {
        table("received.csv", "date,material,lot,units,paid", this::received);
        table("soaked.csv", "date,tub,lot,kg", this::soaked);
        table("made.csv", "date,lot,recipe,input_kg,product_kg", this::made);
        table("packed.csv", "date,lot,product,packs", this::packed);
        table("late.csv", "date,product,packs", this::late);
        table("delivered.csv", "date,customer,line,product,lot,packs", this::delivered);
        table("sold.csv", "date,lot,product,packs", this::sold);
        table("counted.csv", "date,material,lot,units", this::counted);
        table("stock.csv", "counted,lot,product,packs,pack_date,best_before", this::stock);
        if (!problems.isEmpty()) throw new BadFile(problems);
        return List.copyOf(facts);
    }

    private void table(String file, String header, java.util.function.BiConsumer<String, HistoryRow> use) {
        new HistoryTable(file, header, problems).read(folder, row -> use.accept(file, row));
    }

    private void received(String file, HistoryRow row) {
        Optional<Material> material = material(row);
        String lot = row.name("lot");
        LocalDate day = row.day("date");
        if (material.isEmpty()) return;
        var units = row.units("units", material.get().unit());
        var paid = row.money("paid", shop.house().currency());
        bought.put(lot, material.get());
        keep(
                row,
                new Fact.Received(material.get().code(), lot, units, paid),
                day.atTime(RECEIVED),
                new Key(file, "lot", lot));
    }

    private void soaked(String file, HistoryRow row) {
        LocalDate day = makingDay(row);
        row.known(
                "tub",
                code -> shop.floor().tubs().stream()
                        .filter(tub -> tub.code().equals(code))
                        .findFirst(),
                "write a tub of stations.toml");
        row.known("lot", lot -> Optional.ofNullable(bought.get(lot)), "write a lot of received.csv");
        Mass beans = row.kilograms("kg");
        keep(
                row,
                new Fact.Soaked(day, row.text("tub"), row.text("lot"), beans),
                day.minusDays(1).atTime(SOAKED),
                new Key(file, "tub", day + " " + row.text("tub") + " " + row.text("lot")));
    }

    private void made(String file, HistoryRow row) {
        LocalDate day = makingDay(row);
        LotCode lot = row.lot("lot");
        Optional<Recipe> recipe = row.known("recipe", this::recipe, "write a recipe of recipes.toml");
        Mass input = row.kilograms("input_kg");
        Mass product = row.kilograms("product_kg");
        if (!row.isBad()
                && !LotCode.of(day, recipe.get().mark(), 1)
                        .text()
                        .startsWith(lot.text().substring(0, 9)))
            row.note("lot", "is of another day or recipe", "begin it with the row's day and its recipe's mark");
        made.add(lot);
        keep(
                row,
                new Fact.Yielded(lot, row.text("recipe"), input, product),
                day.atTime(YIELDED),
                new Key(file, "lot", lot.text()));
    }

    private void packed(String file, HistoryRow row) {
        LocalDate day = makingDay(row);
        LotCode lot = row.lot("lot");
        Optional<Product> product = product(row);
        if (!row.isBad() && !made.contains(lot))
            row.note("lot", "is not in made.csv", "write the lot as it stands there");
        if (!row.isBad() && !product.get().recipe().equals(recipeOf(lot)))
            row.note("product", "is not made by the lot's recipe", "look at the lot and the product");
        filled.add(lot + " " + row.text("product"));
        keep(
                row,
                new Fact.Packed(lot, row.text("product"), row.count("packs")),
                day.atTime(PACKED),
                new Key(file, "product", lot + " " + row.text("product")));
    }

    private void late(String file, HistoryRow row) {
        LocalDate day = makingDay(row);
        product(row);
        keep(
                row,
                new Fact.CameLate(row.text("product"), day, row.count("packs")),
                day.minusDays(1).atTime(CAME_LATE),
                new Key(file, "product", day + " " + row.text("product")));
    }

    private void delivered(String file, HistoryRow row) {
        LocalDate day = row.day("date");
        var customer = row.known("customer", shop::findCustomer, "write a customer of customers.csv");
        product(row);
        LotCode lot = filledLot(row);
        int line = row.count("line");
        LocalTime left = customer.map(who -> shop.route(who.route()).departs()).orElse(SOLD);
        String order = "H-" + day + "-" + row.text("customer");
        keep(
                row,
                new Fact.Delivered(order, line, row.text("customer"), lot, row.text("product"), row.count("packs")),
                day.atTime(left),
                new Key(file, "line", order + " " + line + " " + lot));
    }

    private void sold(String file, HistoryRow row) {
        LocalDate day = row.day("date");
        product(row);
        LotCode lot = filledLot(row);
        keep(
                row,
                new Fact.Sold(lot, row.text("product"), row.count("packs")),
                day.atTime(SOLD),
                new Key(file, "product", day + " " + lot + " " + row.text("product")));
    }

    private void counted(String file, HistoryRow row) {
        LocalDate day = row.day("date");
        Optional<Material> material = material(row);
        if (material.isEmpty()) return;
        String lot = row.text("lot");
        row.known(
                "lot",
                code -> Optional.ofNullable(bought.get(code)).filter(material.get()::equals),
                "write a lot of this material in received.csv");
        keep(
                row,
                new Fact.CountedMaterial(
                        material.get().code(),
                        lot,
                        row.units("units", material.get().unit())),
                day.atTime(COUNTED),
                new Key(file, "lot", day + " " + lot));
    }

    private void stock(String file, HistoryRow row) {
        LocalDate day = row.day("counted");
        product(row);
        LotCode lot = filledLot(row);
        LocalDate packed = row.day("pack_date");
        LocalDate until = row.day("best_before");
        if (!row.isBad() && until.isBefore(packed))
            row.note("best_before", "is before the pack date", "write what the label says");
        keep(
                row,
                new Fact.CountedPacks(
                        lot, row.text("product"), row.count("packs"), Optional.of(new Fact.Dating(packed, until))),
                day.atTime(COUNTED),
                new Key(file, "product", day + " " + lot + " " + row.text("product")));
    }

    private LocalDate makingDay(HistoryRow row) {
        LocalDate day = row.day("date");
        if (!row.isBad() && !shop.calendar().isWorkDay(day))
            row.note("date", "is no making day of the calendar", "write a day on which the shop makes");
        return day;
    }

    private Optional<Material> material(HistoryRow row) {
        return row.known("material", shop::findMaterial, "write a material of materials.csv");
    }

    private Optional<Product> product(HistoryRow row) {
        return row.known("product", shop::findProduct, "write a product of products.csv");
    }

    private Optional<Recipe> recipe(String code) {
        return shop.recipes().stream()
                .filter(recipe -> recipe.code().equals(code))
                .findFirst();
    }

    private String recipeOf(LotCode lot) {
        String mark = lot.text().substring(7, 9);
        return shop.recipes().stream()
                .filter(recipe -> recipe.mark().equals(mark))
                .map(Recipe::code)
                .findFirst()
                .orElse("");
    }

    private LotCode filledLot(HistoryRow row) {
        LotCode lot = row.lot("lot");
        if (!row.isBad() && !filled.contains(lot + " " + row.text("product")))
            row.note("lot", "was not filled into this product by packed.csv", "write the lot as it stands there");
        return lot;
    }

    /** What a row is about, and the cell that says so. */
    private record Key(String file, String column, String text) {}

    private void keep(HistoryRow row, Fact fact, java.time.LocalDateTime at, Key key) {
        if (row.isBad()) return;
        String origin = "history/" + key.file() + " " + key.text();
        if (!origins.add(origin)) {
            row.note(key.column(), "stands here for the second time", "put the rows together into one");
            return;
        }
        var instant = at.atZone(shop.house().zone()).toInstant();
        facts.add(new Recorded(fact, instant, instant, origin));
    }
}
