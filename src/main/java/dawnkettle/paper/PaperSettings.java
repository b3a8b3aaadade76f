package dawnkettle.paper;

import java.net.URI;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * How sheets are printed.
 *
 * @param queue address of the print queue or printer, as ipp://printer.example/ipp/print; empty where sheets only go to the out-tray
 * @param queues another address by kind of sheet
 * @param copies copies by kind of sheet; a kind that is not named is printed once
 * @param sides sides of the paper by kind of sheet; a kind that is not named is printed as the queue is set
 * @param patience how long a job is followed before it counts as not printed
 */
public record PaperSettings(
        Optional<URI> queue,
        Map<String, URI> queues,
        Map<String, Integer> copies,
        Map<String, Sides> sides,
        Duration patience) {
    public PaperSettings {
        queues = Map.copyOf(queues);
        copies = Map.copyOf(copies);
        sides = Map.copyOf(sides);
    }

    /** On how many sides of the paper. */
    public enum Sides {
        ONE,
        TWO
    }

    /** Where a kind of sheet is printed. */
    Optional<URI> queueOf(String kind) {
        return Optional.ofNullable(queues.get(kind)).or(() -> queue);
    }

    /** All printers that sheets go to, in an order that stays. */
    Set<URI> addresses() {
        Set<URI> all = new TreeSet<>(queues.values());
        queue.ifPresent(all::add);
        return all;
    }

    int copiesOf(String kind) {
        return copies.getOrDefault(kind, 1);
    }

    Optional<Sides> sidesOf(String kind) {
        return Optional.ofNullable(sides.get(kind));
    }

    /** Whether any sheet is printed at all. */
    public boolean reachesPaper() {
        return queue.isPresent() || !queues.isEmpty();
    }
}
