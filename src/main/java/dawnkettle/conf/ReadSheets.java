package dawnkettle.conf;

import dawnkettle.measure.Mass;
import dawnkettle.sheet.SheetSettings;
import dawnkettle.shop.House;
import dawnkettle.shop.Material;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads of {@code shop.toml} in which languages the sheets speak, which scoops hang at the bench and whether losses are worked out. */
final class ReadSheets {
    private static final int MOST_LANGUAGES = 2;

    private final Section file;
    private final House house;

    ReadSheets(Section file, House house) {
        this.file = file;
        this.house = house;
    }

    /** @param materials what is bought, by whose codes the scoops are named */
    SheetSettings settings(List<Material> materials) {
        Optional<Section> sheets = file.findSection("sheets");
        if (sheets.isEmpty()) return SheetSettings.in(house.language());
        List<String> languages = languages(sheets.get());
        Map<String, Mass> scoops = new HashMap<>();
        sheets.get().findSection("scoops").ifPresent(section -> {
            for (Material material : materials)
                section.find(material.code())
                        .ifPresent(grams -> scoops.put(material.code(), Mass.grams(grams.whole(1, 20_000))));
            section.noMore();
        });
        boolean hasIfCard = sheets.get().find("if_card").map(Written::truth).orElse(true);
        sheets.get().noMore();
        return new SheetSettings(languages, scoops, hasIfCard);
    }

    private List<String> languages(Section sheets) {
        List<String> languages = new ArrayList<>();
        for (Written written : sheets.findList("languages")) {
            String tag = written.words();
            if (SheetSettings.spoken(tag).isEmpty())
                written.bad("en", "is not spoken", "write one of " + String.join(", ", SheetSettings.SPOKEN));
            else if (languages.size() == MOST_LANGUAGES)
                written.bad("en", "is one too many", "a sheet has room for two languages");
            else languages.add(tag);
        }
        return languages.isEmpty() ? List.of(house.language()) : languages;
    }
}
