package dawnkettle.conf;

import dawnkettle.cost.Buying;
import dawnkettle.night.NightSettings;
import dawnkettle.stock.RecordRules;
import java.time.LocalTime;
import java.util.Currency;
import java.util.EnumSet;
import java.util.Set;

/** Reads of {@code shop.toml} which records are required, when a recall is practised, and how to buy. */
final class ReadRecords {
    private final Section file;

    ReadRecords(Section file) {
        this.file = file;
    }

    NightSettings.Records records() {
        return file.findSection("records").map(ReadRecords::read).orElse(NightSettings.Records.USUAL);
    }

    private static NightSettings.Records read(Section from) {
        NightSettings.Records usual = NightSettings.Records.USUAL;
        Set<RecordRules.Wanted> required = EnumSet.noneOf(RecordRules.Wanted.class);
        if (from.find("required").isPresent())
            from.findList("required").forEach(word -> required.add(word.oneOf(RecordRules.Wanted.class)));
        int grace = from.find("grace_minutes")
                .map(cell -> cell.whole(0, 1_440))
                .orElse(usual.rules().graceMinutes());
        int day = from.find("drill_day").map(cell -> cell.whole(1, 28)).orElse(usual.drillDay());
        LocalTime at = from.find("drill_at").map(Written::time).orElse(usual.drillAt());
        from.find("keep_years"); // read by ReadCare, with what it erases
        from.noMore();
        return new NightSettings.Records(new RecordRules(required, grace), day, at);
    }

    /** How the shop likes to buy; all of it may be left out. */
    Buying buying(Currency currency) {
        return file.findSection("buying").map(from -> buying(from, currency)).orElse(Buying.USUAL);
    }

    private static Buying buying(Section from, Currency currency) {
        Buying usual = Buying.USUAL;
        int cover = from.find("cover_days").map(cell -> cell.whole(1, 365)).orElse(usual.coverDays());
        Buying read = new Buying(
                from.find("order_cost").map(cell -> cell.money(currency)),
                from.find("holding_percent").map(cell -> cell.whole(0, 100)).orElse(usual.holdingPercent()),
                cover,
                from.find("most_days").map(cell -> cell.whole(cover, 730)).orElse(Math.max(cover, usual.mostDays())));
        from.noMore();
        return read;
    }
}
