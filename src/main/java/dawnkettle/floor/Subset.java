package dawnkettle.floor;

import java.util.ArrayList;
import java.util.List;

/** A growing set of operations that want one room, joined in order of falling tail. */
final class Subset {
    private final Room room;
    private final List<Workload.Want> all = new ArrayList<>();
    /** Those with the earliest heads, as many as fill the room. */
    private final List<Workload.Want> earliest = new ArrayList<>();

    private long unitMinutes;
    private long units;
    private int head = Integer.MAX_VALUE;
    private int families;

    Subset(Room room) {
        this.room = room;
    }

    void add(Workload.Want want) {
        all.add(want);
        unitMinutes += want.units() * want.minutes();
        units += want.units();
        head = Math.min(head, want.head());
        families |= 1 << want.family();
        int at = earliest.size();
        while (at > 0 && earliest.get(at - 1).head() > want.head()) at--;
        earliest.add(at, want);
        trim();
    }

    private void trim() {
        long filled = 0;
        for (int at = 0; at < earliest.size(); at++) {
            filled += earliest.get(at).units();
            if (filled < room.most()) continue;
            earliest.subList(at + 1, earliest.size()).clear();
            return;
        }
    }

    int endAtLeast() {
        int tail = all.get(all.size() - 1).tail();
        int end = byMinutesLeft(tail);
        if (units >= room.most() && room.most() > 0) end = Math.max(end, byUnits());
        if (room.changesOver())
            end = Math.max(end, Math.toIntExact(head + unitMinutes + room.changeoverMinutes(families) + tail));
        return end;
    }

    /** All work lies between the first head and the last tail, in minutes in which the room gives something. */
    private int byMinutesLeft(int tail) {
        int done = room.doneBy(head, unitMinutes);
        return done == Minutes.NEVER ? 0 : done + tail;
    }

    /** Every unit idles at least until a head of its own and from a tail of its own on. */
    private int byUnits() {
        long most = room.most();
        long sum = unitMinutes;
        long left = most;
        for (int at = 0; left > 0; at++) {
            long filled = Math.min(left, earliest.get(at).units());
            sum += filled * earliest.get(at).head();
            left -= filled;
        }
        left = most;
        for (int at = all.size() - 1; left > 0; at--) {
            long filled = Math.min(left, all.get(at).units());
            sum += filled * all.get(at).tail();
            left -= filled;
        }
        return Math.toIntExact((sum + most - 1) / most);
    }
}
