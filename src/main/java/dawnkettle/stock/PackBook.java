package dawnkettle.stock;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The packs of one product of one lot, played from the filling on: every pack that was filled is with a customer, sold,
 * lost, destroyed or here, and what a count found otherwise stands as a difference with its reason.
 */
public final class PackBook {
    private final List<Change> changes = new ArrayList<>();
    private final List<String> differences = new ArrayList<>();
    private int filled;
    private int difference;
    private int loaded;
    private int allocated;
    private int sold;
    private int lost;
    private int returned;
    private int destroyed;
    private int destroyedHere;
    private int here;

    private record Change(Instant at, int rank, Runnable applied) {}

    private void at(Instant when, int rank, Runnable applied) {
        changes.add(new Change(when, rank, applied));
    }

    /** Packs were filled; everything else of that moment comes after. */
    public void filled(Instant when, int packs) {
        at(when, 0, () -> {
            filled += packs;
            here += packs;
        });
    }

    /** Packs went to a customer. */
    public void loaded(Instant when, int packs) {
        at(when, 1, () -> {
            gone("were loaded", packs);
            loaded += packs;
        });
    }

    /** Packs are promised and have not left. */
    public void allocated(int packs) {
        allocated += packs;
    }

    public void sold(Instant when, int packs) {
        at(when, 1, () -> {
            gone("were sold", packs);
            sold += packs;
        });
    }

    public void lost(Instant when, int packs) {
        at(when, 1, () -> {
            gone("are lost", packs);
            lost += packs;
        });
    }

    /** Whatever of it is here is lost. */
    public void wholeLost(Instant when) {
        at(when, 2, () -> {
            lost += here;
            here = 0;
        });
    }

    public void returned(Instant when, int packs) {
        at(when, 1, () -> returned += packs);
    }

    /** Packs were destroyed, those that came back first. */
    public void destroyed(Instant when, int packs) {
        at(when, 2, () -> {
            int ofReturned = Math.max(0, Math.min(packs, returned - (destroyed - destroyedHere)));
            gone("were destroyed", packs - ofReturned);
            destroyed += packs;
            destroyedHere += packs - ofReturned;
        });
    }

    /** What lies in the cold room, promised packs with it. */
    public void counted(Instant when, int packs, String why) {
        at(when, 3, () -> {
            if (packs != here) differ(packs - here, why.isEmpty() ? "counted, no reason given" : why);
            here = packs;
        });
    }

    private void gone(String how, int packs) {
        if (packs > here) {
            differ(packs - here, "more " + how + " than the books held");
            here = packs;
        }
        here -= packs;
    }

    private void differ(int packs, String why) {
        difference += packs;
        differences.add((packs > 0 ? "+" : "") + packs + " packs: " + why);
    }

    /** Plays everything in the order in which it happened. */
    public State played() {
        changes.stream()
                .sorted(Comparator.comparing(Change::at).thenComparing(Change::rank))
                .forEach(change -> change.applied().run());
        changes.clear();
        int promised = Math.min(allocated, here);
        return new State(
                new In(filled, difference),
                new Out(loaded, sold, lost, destroyedHere),
                new Here(promised, here - promised),
                new Back(returned, destroyed - destroyedHere),
                differences);
    }

    /** What there was: packs filled, and what counts found more (or, below zero, fewer). */
    public record In(int filled, int difference) {
        public int all() {
            return filled + difference;
        }
    }

    /** Where it went. */
    public record Out(int loaded, int sold, int lost, int destroyed) {
        public int all() {
            return loaded + sold + lost + destroyed;
        }
    }

    /** What is in the house: promised to somebody, or to nobody. */
    public record Here(int allocated, int inStock) {
        public int all() {
            return allocated + inStock;
        }
    }

    /** What came back from customers, and how much of that is destroyed. */
    public record Back(int returned, int destroyed) {}

    /** How a lot's packs of a product stand. */
    public record State(In in, Out out, Here here, Back back, List<String> differences) {
        public State {
            differences = List.copyOf(differences);
        }

        /** Whether every pack is accounted for; only a mistake of ours says no. */
        public boolean isWhole() {
            return in.all() == out.all() + here.all();
        }

        /** Packs that customers still have or have used. */
        public int withCustomers() {
            return out.loaded() - back.returned();
        }
    }
}
