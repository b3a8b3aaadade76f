package dawnkettle.label;

import java.util.Arrays;
import java.util.Optional;

/** What a label printer may say of itself. */
public enum Condition {
    BUSY("busy", "is busy", "wait"),
    PAPER_OUT("paper-out", "is out of labels", "put in labels"),
    RIBBON_OUT("ribbon-out", "is out of ribbon", "put in a ribbon"),
    COVER_OPEN("cover-open", "has its cover open", "close it"),
    JAM("jam", "has a jam", "clear it"),
    HEAD_HOT("head-hot", "has a hot head", "let it cool; do not touch the head"),
    PAUSED("paused", "is paused", "press its button"),
    OFFLINE("offline", "is off line", "switch it to on line"),
    FAULT("fault", "reports a fault", "look at its lamp"),
    PAPER_LOW("paper-low", "is low on labels", "have a roll at hand");

    private final String word;
    private final String said;
    private final String remedy;

    Condition(String word, String said, String remedy) {
        this.word = word;
        this.said = said;
        this.remedy = remedy;
    }

    public static Optional<Condition> find(String word) {
        return Arrays.stream(values()).filter(one -> one.word.equals(word)).findFirst();
    }

    /** As profiles write it. */
    public String word() {
        return word;
    }

    /** As a person reads it, after "the label printer". */
    public String said() {
        return said;
    }

    public String remedy() {
        return remedy;
    }

    /** Whether nothing comes out until a person has done something, or the head has cooled. */
    public boolean stops() {
        return this != BUSY && this != PAPER_LOW;
    }
}
