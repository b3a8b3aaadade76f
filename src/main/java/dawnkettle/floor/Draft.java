package dawnkettle.floor;

/** An order of pieces with the score of its run, in two numbers that order as the score does. */
record Draft(int[] order, long grave, long mild) {
    static final Draft NONE = new Draft(new int[0], Long.MAX_VALUE, Long.MAX_VALUE);

    boolean isBetterThan(Draft other) {
        return grave < other.grave || (grave == other.grave && mild < other.mild);
    }

    /** The better of the two, this one where they are alike. */
    Draft orBetter(Draft other) {
        return other.isBetterThan(this) ? other : this;
    }

    double cost() {
        return Tally.cost(grave, mild);
    }

    boolean isLate() {
        return grave != Long.MAX_VALUE && score().weightedLateness() > 0;
    }

    /** True where every job has its place, nothing spoils and nothing is late. */
    boolean isInTime() {
        return grave == 0 && !isLate();
    }

    Score score() {
        return Tally.score(grave, mild);
    }
}
