package dawnkettle.night;

import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.util.List;

/** What a person asks for beside the night: keys of its effects, and how a wrong word is refused. */
final class ByHand {
    private static final String MARK = "by hand ";

    private ByHand() {}

    /** @param what begins with the kind of thing; made unique by the time in it */
    static String key(String what) {
        return MARK + what;
    }

    /** Whether an effect was asked for by a person: the morning summary tells of the night's own. */
    static boolean is(String effectKey) {
        return effectKey.startsWith(MARK) || effectKey.startsWith("sheet " + MARK);
    }

    static BadFile refused(String option, String what, String remedy) {
        return new BadFile(List.of(new Problem(Place.of(option), what, remedy)));
    }
}
