package dawnkettle.conf;

import dawnkettle.book.StandingOrder;
import dawnkettle.intake.ThermometerSettings;
import dawnkettle.night.NightSettings;
import dawnkettle.paper.PaperSettings;
import dawnkettle.post.PostSettings;
import dawnkettle.sheet.SheetSettings;
import dawnkettle.shop.Shop;
import java.nio.file.Path;
import java.util.List;

/**
 * Everything that the owner wrote down in {@code conf/}, checked and whole.
 *
 * @param typefaces files that stand in, in this order, where our own typeface lacks a character
 */
public record Configuration(
        Shop shop,
        List<StandingOrder> standing,
        NightSettings night,
        PostSettings post,
        PaperSettings paper,
        SheetSettings sheets,
        ThermometerSettings thermometer,
        LabelChoice labels,
        List<Path> typefaces) {
    public Configuration {
        standing = List.copyOf(standing);
        typefaces = List.copyOf(typefaces);
    }
}
