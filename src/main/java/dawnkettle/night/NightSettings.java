package dawnkettle.night;

import dawnkettle.cost.Buying;
import dawnkettle.stock.RecordRules;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * When the steps of a night are due, where things lie, and how long to search.
 *
 * @param times local times of the steps
 * @param places folders and files
 * @param search how much a plan may cost
 * @param letters who gets which mail, and what goes along
 * @param records which records are required, and when a recall is practised
 * @param buying how much to order at once
 * @param care how the ledger and its disk are cared for
 */
public record NightSettings(
        Times times, Places places, Search search, Mailing letters, Records records, Buying buying, Care care) {

    public NightSettings(Times times, Places places, Search search, Mailing letters) {
        this(times, places, search, letters, Records.USUAL, Buying.USUAL, Care.NONE);
    }

    /** The same night with all that changes from day to day in {@code folder}, of which no care is taken. */
    public NightSettings inFolder(Path folder) {
        Places inside =
                new Places(folder.resolve("ledger.db"), folder, folder.resolve("drop"), folder.resolve("backups"));
        return new NightSettings(times, inside, search, letters, records, buying, Care.NONE);
    }

    /**
     * @param soakCall before the first tub must be filled, on the working day before the production day
     * @param close cut-off of the order book, on the working day before the production day
     * @param dawnCheck before the first grind, on the production day
     * @param labelsBeforeMinutes how long before a lot is packed its labels are printed
     * @param summary morning summary, on the production day
     * @param selfTest evening self-test, while somebody is awake
     * @param fallback count sheet and fallback sheet, in the afternoon
     * @param backup nightly copy of the ledger
     */
    public record Times(
            LocalTime soakCall,
            LocalTime close,
            LocalTime dawnCheck,
            int labelsBeforeMinutes,
            LocalTime summary,
            LocalTime selfTest,
            LocalTime fallback,
            LocalTime backup,
            DayOfWeek costDay,
            LocalTime costAt) {}

    /**
     * @param summaryTo addresses that the morning summary and the cost report go to
     * @param alertTo addresses that are told of trouble at once; none for no alerts
     * @param farmerTo addresses that are told of the okara
     * @param calendar whether the summary brings the vans as calendar entries
     * @param attached kinds of sheets that go along with the summary as PDF
     */
    public record Mailing(
            List<String> summaryTo,
            List<String> alertTo,
            List<String> farmerTo,
            boolean calendar,
            Set<String> attached) {
        /** Nobody is written to. */
        public static final Mailing NONE = new Mailing(List.of(), List.of(), List.of(), false, Set.of());

        public Mailing {
            summaryTo = List.copyOf(summaryTo);
            alertTo = List.copyOf(alertTo);
            farmerTo = List.copyOf(farmerTo);
            attached = Set.copyOf(attached);
        }
    }

    /**
     * @param ledger the SQLite file
     * @param outTray where every PDF, label preview and mail is left as well
     * @param dropFolder where CSV orders are dropped
     * @param backups where nightly copies go
     */
    public record Places(Path ledger, Path outTray, Path dropFolder, Path backups) {}

    /**
     * @param decodes schedules that the run search may build, 0 or more
     * @param guardMillis after which it stops all the same, in milliseconds
     * @param seed of the search
     */
    public record Search(long decodes, long guardMillis, long seed) {}

    /**
     * @param rules which records are required of a batch
     * @param drillDay day of the month from which on, on the first work day, a recall is practised
     * @param drillAt local time of it
     */
    public record Records(RecordRules rules, int drillDay, LocalTime drillAt) {
        public static final Records USUAL = new Records(RecordRules.NONE, 1, LocalTime.of(10, 0));
    }

    /**
     * @param selfTests whether the machine and its devices are looked at in the evening
     * @param room how much of the disk stays free
     * @param copies where copies of the ledger go besides
     * @param keepYears after how many years the words of mails and old copies are erased; 0 for never
     */
    public record Care(boolean selfTests, Room room, Copies copies, int keepYears) {
        /** As in a rehearsal: nothing is looked at, kept back or erased. */
        public static final Care NONE =
                new Care(false, new Room(0, 0), new Copies(Optional.empty(), Optional.empty()), 0);
    }

    /**
     * @param free bytes that the self-test wants to be free
     * @param ballast bytes of a file that is given up when the disk is full; 0 for no such file
     */
    public record Room(long free, long ballast) {}

    /**
     * @param second another folder, as on a stick or another machine, that each copy goes to as well
     * @param key file with the key under which the copies there are locked; empty where they lie open
     */
    public record Copies(Optional<Path> second, Optional<Path> key) {}
}
