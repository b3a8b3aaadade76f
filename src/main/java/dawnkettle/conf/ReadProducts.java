package dawnkettle.conf;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.measure.Volume;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.BlockSize;
import dawnkettle.shop.Keeping;
import dawnkettle.shop.Pack;
import dawnkettle.shop.Packing;
import dawnkettle.shop.Product;
import dawnkettle.shop.Sealing;
import dawnkettle.shop.Wording;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads {@code products.csv}: what is sold, and how long it keeps. */
final class ReadProducts {
    static final String FILE = "products.csv";
    static final List<String> COLUMNS = List.of(
            "code",
            "name",
            "recipe",
            "pack",
            "net_g",
            "net_ml",
            "block_mm",
            "packs_in_case",
            "deposit",
            "gtin",
            "shelf_life_days",
            "validated_by",
            "validated_on",
            "sealing",
            "pasteurised",
            "least_days_left",
            "ingredients",
            "contains",
            "storage",
            "design",
            "price",
            "lead_days",
            "par");

    /**
     * Days a sealed chilled pack may have without a further control such as 90 °C for 10 minutes: UK Food Standards
     * Agency, guidance on vacuum and modified atmosphere packed chilled foods, December 2020, for 3 to 8 °C.
     */
    static final int LONGEST_SEALED_DAYS = 10;

    /** The warmest storage for which that limit holds; the same guidance. */
    static final int WARMEST_STORAGE = 8;

    private static final Pattern BLOCK = Pattern.compile("([0-9]{1,4})x([0-9]{1,4})x([0-9]{1,4})");
    private static final Pattern TEMPERATURE = Pattern.compile("(-?[0-9]{1,3})\\s*°\\s*([CF])");

    private final Known known;
    private final Currency currency;
    private final String design;
    private final Names gtins = new Names("case number", FILE);

    ReadProducts(Known known, Currency currency, String design) {
        this.known = known;
        this.currency = currency;
        this.design = design;
    }

    List<Placed<Product>> read(Rows rows) {
        if (!rows.whole()) known.products.notWhole();
        List<Placed<Product>> products = new ArrayList<>();
        for (Cells row : rows.cells()) one(row).ifPresent(product -> products.add(new Placed<>(product, row.place())));
        return products;
    }

    private Optional<Product> one(Cells row) {
        int before = row.problems().count();
        String code = known.products.declare(row.in("code"));
        String name = row.in("name").words();
        String recipe = known.recipes.refer(row.in("recipe"));
        Packing packing = packing(row);
        Keeping keeping = keeping(row);
        Wording wording = wording(row, keeping);
        Money price = row.in("price").money(currency);
        int leadDays = wholeOrZero(row, "lead_days", 30);
        int par = wholeOrZero(row, "par", 10_000);
        if (row.problems().count() > before) return Optional.empty();
        return Optional.of(new Product(code, name, recipe, packing, keeping, wording, price, leadDays, par));
    }

    private static int wholeOrZero(Cells row, String column, int most) {
        return row.find(column).map(cell -> cell.whole(0, most)).orElse(0);
    }

    private Packing packing(Cells row) {
        Pack pack = row.in("pack").oneOf(Pack.class);
        Mass net = row.in("net_g").grams();
        Optional<Volume> volume = row.find("net_ml").map(cell -> Volume.millilitres(cell.whole(1, 1_000_000)));
        Optional<BlockSize> block = row.find("block_mm").map(ReadProducts::block);
        Written size = row.in("block_mm");
        if (pack != Pack.BOTTLE && size.isBlank())
            size.bad(0, "is empty", "write the largest piece as it is cooled, as 60x100x100");
        int packsInCase = row.in("packs_in_case").whole(1, 1_000);
        Money deposit = row.find("deposit").map(cell -> cell.money(currency)).orElse(Money.zero(currency));
        return new Packing(pack, net, volume, packsInCase, block, deposit);
    }

    private static BlockSize block(Written size) {
        Matcher edges = BLOCK.matcher(size.text());
        BlockSize none = new BlockSize(1, 1, 1);
        if (!edges.matches()) return size.bad(none, "is not a size", "write its three edges in mm, as 60x100x100");
        int[] mm = new int[3];
        for (int i = 0; i < 3; i++) mm[i] = Integer.parseInt(edges.group(i + 1));
        return Math.min(mm[0], Math.min(mm[1], mm[2])) > 0
                ? new BlockSize(mm[0], mm[1], mm[2])
                : size.bad(none, "has an edge of 0 mm", "write its three edges in mm, as 60x100x100");
    }

    private Keeping keeping(Cells row) {
        Written life = row.in("shelf_life_days");
        int days = life.whole(1, 365);
        Sealing sealing = row.in("sealing").oneOf(Sealing.class);
        boolean pasteurised = row.in("pasteurised").truth();
        Written left = row.in("least_days_left");
        int leastLeft = left.whole(0, 365);
        if (!life.isBlank() && leastLeft > days)
            left.bad(leastLeft, "is more than shelf_life_days", "write at most " + days);
        if (sealing.isSealed() && !pasteurised && days > LONGEST_SEALED_DAYS)
            life.bad(
                    days,
                    "is too long for a sealed pack that is not pasteurised",
                    "write at most " + LONGEST_SEALED_DAYS
                            + " (UK FSA, vacuum and MAP chilled foods, 2020), or less where your validation says less");
        return new Keeping(
                days, row.in("validated_by").words(), row.in("validated_on").date(), sealing, pasteurised, leastLeft);
    }

    private Wording wording(Cells row, Keeping keeping) {
        Written contains = row.in("contains");
        if (contains.isBlank()) contains.bad(0, "is empty", "write every allergen, as soy or soy;sesame");
        List<Allergen> allergens = Allergens.read(contains.parts());
        String storage = row.in("storage").words();
        if (keeping.sealing().isSealed() && !storage.equals(Written.NOTHING) && !isCold(storage))
            row.in("storage")
                    .bad(
                            0,
                            "names no cold storage for a sealed pack",
                            "name a temperature of at most " + WARMEST_STORAGE
                                    + " °C, as Keep refrigerated at or below 5 °C");
        return new Wording(
                row.in("ingredients").words(),
                allergens,
                storage,
                row.find("design").map(Written::code).orElse(design),
                row.find("gtin").map(this::gtin));
    }

    private String gtin(Written cell) {
        String number = Gtin.read(cell);
        return number.matches("[0-9]{14}") ? gtins.declare(cell) : number;
    }

    private static boolean isCold(String storage) {
        Matcher named = TEMPERATURE.matcher(storage);
        boolean cold = false;
        while (named.find()) {
            int degrees = Integer.parseInt(named.group(1));
            double celsius = named.group(2).equals("C") ? degrees : (degrees - 32) / 1.8;
            if (celsius > WARMEST_STORAGE) return false;
            cold = true;
        }
        return cold;
    }
}
