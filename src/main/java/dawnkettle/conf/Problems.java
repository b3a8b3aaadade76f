package dawnkettle.conf;

import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Every problem found so far, of every file. */
final class Problems {
    private final List<Problem> found = new ArrayList<>();

    void add(Place place, String what, String remedy) {
        found.add(new Problem(place, what, remedy));
    }

    void addAll(Collection<Problem> problems) {
        found.addAll(problems);
    }

    int count() {
        return found.size();
    }

    /** @throws BadFile with all of them, where there are any */
    void throwIfAny() {
        if (!found.isEmpty()) throw new BadFile(List.copyOf(found));
    }
}
