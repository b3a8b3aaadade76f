package dawnkettle.conf;

import dawnkettle.shop.PackUse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads {@code packaging.csv}: what products are packed in. The file may be left out. */
final class ReadPackaging {
    static final String FILE = "packaging.csv";
    static final List<String> COLUMNS = List.of("product", "material", "per", "pieces");

    private final Known known;
    private final Map<String, Integer> lines = new HashMap<>();

    ReadPackaging(Known known) {
        this.known = known;
    }

    List<PackUse> read(Rows rows) {
        return rows.cells().stream().flatMap(row -> one(row).stream()).toList();
    }

    private Optional<PackUse> one(Cells row) {
        int before = row.problems().count();
        String product = known.products.refer(row.in("product"));
        Written code = row.in("material");
        String material = known.materials.refer(code);
        PackUse.Per per = row.in("per").oneOf(PackUse.Per.class);
        var pieces = row.in("pieces").ratio("0.0001", "1000");
        if (row.problems().count() > before) return Optional.empty();
        Integer other = lines.putIfAbsent(product + " " + material, row.place().line());
        if (other == null) return Optional.of(new PackUse(product, material, per, pieces));
        code.bad(0, "already is packaging of \"" + product + "\" in line " + other, "keep one");
        return Optional.empty();
    }
}
