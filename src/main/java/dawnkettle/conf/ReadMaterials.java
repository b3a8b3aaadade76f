package dawnkettle.conf;

import dawnkettle.shop.Material;
import java.util.Currency;
import java.util.List;
import java.util.Optional;

/** Reads {@code materials.csv}: what is bought. */
final class ReadMaterials {
    static final String FILE = "materials.csv";
    static final List<String> COLUMNS =
            List.of("code", "name", "kind", "soak_group", "unit", "pack_size", "lead_days", "reorder", "price");

    private final Known known;
    private final Currency currency;

    ReadMaterials(Known known, Currency currency) {
        this.known = known;
        this.currency = currency;
    }

    List<Material> read(Rows rows) {
        if (!rows.whole()) {
            known.materials.notWhole();
            known.soakGroups.notWhole();
        }
        return rows.cells().stream().flatMap(row -> one(row).stream()).toList();
    }

    private Optional<Material> one(Cells row) {
        int before = row.problems().count();
        String code = known.materials.declare(row.in("code"));
        String name = row.in("name").words();
        Material.Kind kind = row.in("kind").oneOf(Material.Kind.class);
        String group = soakGroup(row, kind);
        Material.Unit unit = row.in("unit").oneOf(Material.Unit.class);
        int packSize = row.in("pack_size").whole(1, 1_000_000);
        int leadDays = row.in("lead_days").whole(0, 365);
        int reorder = row.in("reorder").whole(0, 1_000_000);
        var price = row.in("price").money(currency);
        if (row.problems().count() > before) return Optional.empty();
        return Optional.of(new Material(code, name, kind, group, unit, packSize, leadDays, reorder, price));
    }

    private String soakGroup(Cells row, Material.Kind kind) {
        Written group = row.in("soak_group");
        if (!row.in("kind").text().equals(Written.word(kind))) return "";
        if (kind == Material.Kind.BEANS) return known.soakGroups.admit(group);
        return group.isBlank() ? "" : group.bad("", "stands beside what is not beans", "leave the cell empty");
    }
}
