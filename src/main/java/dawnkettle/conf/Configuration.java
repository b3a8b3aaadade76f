package dawnkettle.conf;

import dawnkettle.book.StandingOrder;
import dawnkettle.intake.ThermometerSettings;
import dawnkettle.night.NightSettings;
import dawnkettle.paper.PaperSettings;
import dawnkettle.post.PostSettings;
import dawnkettle.sheet.SheetSettings;
import dawnkettle.shop.Shop;
import dawnkettle.watch.WatchSettings;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Everything that the owner wrote down in {@code conf/}, checked and whole.
 *
 * @param typefaces files that stand in, in this order, where our own typeface lacks a character
 * @param orderMail where orders come in by mail, where they do
 * @param watch who outside is told that steps were done, where somebody is
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
        List<Path> typefaces,
        Optional<OrderMailChoice> orderMail,
        Optional<WatchSettings> watch) {
    public Configuration {
        standing = List.copyOf(standing);
        typefaces = List.copyOf(typefaces);
    }
}
