package dawnkettle.conf;

import dawnkettle.night.NightSettings;
import dawnkettle.stock.RecordRules;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.Set;

/** Reads of {@code shop.toml} which records are required, and when a recall is practised; all of it may be left out. */
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
        from.noMore();
        return new NightSettings.Records(new RecordRules(required, grace), day, at);
    }
}
