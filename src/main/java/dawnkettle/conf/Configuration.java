package dawnkettle.conf;

import dawnkettle.book.StandingOrder;
import dawnkettle.intake.ThermometerSettings;
import dawnkettle.night.NightSettings;
import dawnkettle.paper.PaperSettings;
import dawnkettle.post.PostSettings;
import dawnkettle.sheet.SheetSettings;
import dawnkettle.shop.Shop;
import java.util.List;

/** Everything that the owner wrote down in {@code conf/}, checked and whole. */
public record Configuration(
        Shop shop,
        List<StandingOrder> standing,
        NightSettings night,
        PostSettings post,
        PaperSettings paper,
        SheetSettings sheets,
        ThermometerSettings thermometer,
        LabelChoice labels) {
    public Configuration {
        standing = List.copyOf(standing);
    }
}
