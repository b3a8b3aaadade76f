package dawnkettle.conf;

import dawnkettle.book.Nearest;
import dawnkettle.trouble.Place;
import java.util.Map;
import java.util.TreeMap;

/** The codes of one kind of thing: each is declared once, and what refers to one must find it. */
final class Names {
    private final String kind;
    private final String file;
    private final Map<String, Place> declared = new TreeMap<>();
    private boolean whole = true;

    Names(String kind, String file) {
        this.kind = kind;
        this.file = file;
    }

    /** Says that the file could not be read whole, so that nobody complains about what may stand in it. */
    void notWhole() {
        whole = false;
    }

    /** Notes a code that is already taken, also where capitals alone differ: people do not say capitals. */
    String declare(Written code) {
        Place first = declared.keySet().stream()
                .filter(other -> other.equalsIgnoreCase(code.text()))
                .findFirst()
                .map(declared::get)
                .orElse(null);
        String name = admit(code);
        if (first == null) return name;
        return code.bad(name, "is already the " + kind + " of line " + first.line(), "give each its own");
    }

    /**
     * Takes a name that may be given any number of times, as a stage by several stations. One that could not be read may
     * be the one that others refer to, so that nobody complains of those any more.
     */
    String admit(Written code) {
        int before = code.problems().count();
        String name = code.code();
        if (code.kind() == Written.Kind.MISSING || code.problems().count() > before) whole = false;
        else declared.putIfAbsent(name, code.place());
        return name;
    }

    /** Takes a name that needs no file. */
    void admit(String name) {
        declared.putIfAbsent(name, Place.of(file));
    }

    /** Notes a reference to something that is not there, with the nearest name that is. */
    String refer(Written code) {
        String name = code.words();
        if (!whole || name.equals(Written.NOTHING) || declared.containsKey(name)) return name;
        String remedy = Nearest.to(name, declared.keySet())
                .map(near -> "write \"" + near + "\" or add it to " + file)
                .orElse("add it to " + file);
        return code.bad(name, "is no " + kind, remedy);
    }
}
