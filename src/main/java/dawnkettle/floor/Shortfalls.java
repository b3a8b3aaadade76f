package dawnkettle.floor;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;

/** Explains which dues of a day cannot be kept. It proves what it says, but a day that it says nothing of may be too full all the same. */
public final class Shortfalls {
    private final JobRows jobs;
    private final Endings endings;

    private Shortfalls(Floor floor) {
        jobs = floor.jobs;
        endings = new Endings(floor);
    }

    /** One line for each due that cannot be kept, the earliest first: the lead time if that is it, otherwise the tightest stage. */
    public static List<Shortfall> of(FloorDay day) {
        var shortfalls = new Shortfalls(new Floor(day));
        return day.dues().stream()
                .sorted(Comparator.comparingInt(Due::minute))
                .map(shortfalls::find)
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<Shortfall> find(Due due) {
        IntPredicate awaited = job -> jobs.isAwaitedUntil(job, due.minute());
        Endings.Ending alone = endings.alone(awaited);
        if (alone.minute() > due.minute()) return Optional.of(shortfall(due, alone, 0));
        int tightest = -1;
        var latest = new Endings.Ending(due.minute(), "");
        for (int room = 0; room < endings.rooms(); room++) {
            Endings.Ending ending = endings.in(room, awaited);
            if (ending.minute() <= latest.minute()) continue;
            latest = ending;
            tightest = room;
        }
        return tightest < 0 ? Optional.empty() : Optional.of(shortfall(due, latest, tooMany(due.minute(), tightest)));
    }

    private static Shortfall shortfall(Due due, Endings.Ending ending, int tooMany) {
        int over = ending.minute() - due.minute();
        return new Shortfall(due.code(), ending.binding(), ending.minute(), over, tooMany, tooMany == 0);
    }

    /** Leaves out one job after another, the hardest first, until the rest could end in time. */
    private int tooMany(int minute, int room) {
        Set<Integer> out = new HashSet<>();
        IntPredicate awaited = job -> jobs.isAwaitedUntil(job, minute) && !out.contains(job);
        for (int job : endings.hardestFirst(room, awaited)) {
            if (endings.in(room, awaited).minute() <= minute) break;
            out.add(job);
        }
        return out.size();
    }
}
