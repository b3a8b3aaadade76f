package dawnkettle.trouble;

/**
 * One thing that the operator wrote wrong.
 *
 * @param place where it stands
 * @param what what is wrong, with the offending value in quotes
 * @param remedy what to write instead
 */
public record Problem(Place place, String what, String remedy) implements Comparable<Problem> {
    public Problem {
        if (what.isBlank() || remedy.isBlank()) throw new IllegalArgumentException("a problem needs what and remedy");
    }

    @Override
    public int compareTo(Problem other) {
        int byPlace = place.compareTo(other.place);
        return byPlace != 0 ? byPlace : what.compareTo(other.what);
    }

    @Override
    public String toString() {
        return place + ": " + what + "; " + remedy;
    }
}
