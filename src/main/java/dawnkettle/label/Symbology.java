package dawnkettle.label;

import java.util.Arrays;
import java.util.Optional;

/** The kinds of symbol that a case label may carry, with the limits that hold for goods in general distribution. */
public enum Symbology {
    /** Module 0.495 to 1.016 mm and bars 31.75 mm high from memory; 10 modules quiet each side read in R18 5.4.4.2. */
    GS1_128("gs1-128", "]C1", new Limits(495, 1_016, 10, 31_750)),
    /** Module from 1.5 times the linear one (read, R18 p. 321) to 1.5 mm (from memory); one module quiet (read). */
    GS1_DATAMATRIX("gs1-datamatrix", "]d2", new Limits(743, 1_500, 1, 0));

    /** Most characters of a GS1-128 symbol (GS1 General Specifications R18 5.4.4.3, read). */
    public static final int MOST_LINEAR_CHARACTERS = 48;

    /** Longest GS1-128 symbol with its quiet zones, in micrometres (R18 5.4.4.3, read). */
    public static final int LONGEST_LINEAR = 165_100;

    private final String word;
    private final String scanHead;
    private final Limits limits;

    Symbology(String word, String scanHead, Limits limits) {
        this.word = word;
        this.scanHead = scanHead;
        this.limits = limits;
    }

    /**
     * What a symbol keeps to.
     *
     * @param leastModule narrowest module in micrometres
     * @param mostModule widest module in micrometres
     * @param quietModules clear modules that stand around it
     * @param leastHeight lowest bars in micrometres
     */
    public record Limits(int leastModule, int mostModule, int quietModules, int leastHeight) {}

    public static Optional<Symbology> find(String word) {
        return Arrays.stream(values()).filter(one -> one.word.equals(word)).findFirst();
    }

    /** As designs write it. */
    public String word() {
        return word;
    }

    /** What a scanner sends before its data. */
    public String scanHead() {
        return scanHead;
    }

    public Limits limits() {
        return limits;
    }

    public boolean isLinear() {
        return this == GS1_128;
    }
}
