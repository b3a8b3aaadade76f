package dawnkettle.sheet;

import java.util.List;
import java.util.Locale;

/** What is done at a stage, as far as cautions and records go; known by how the stage's word begins. */
enum Work {
    GRIND(List.of(Word.CAUTION_GRIND), "grind", "mill"),
    COOK(List.of(Word.CAUTION_COOK, Word.CAUTION_FALSE_BOIL), "cook", "boil", "heat", "steam"),
    FILTER(List.of(Word.CAUTION_COOK), "filter", "separat", "strain", "okara"),
    SET(List.of(Word.CAUTION_SET), "coag", "set", "curd", "vat"),
    PRESS(List.of(Word.CAUTION_PRESS), "press", "mould", "mold"),
    HEAT(List.of(Word.CAUTION_COOK), "pasteur"),
    COOL(List.of(Word.CAUTION_COOL), "bath", "cool"),
    COLD(List.of(Word.CAUTION_COOL), "chill", "cold"),
    CUT(List.of(Word.CAUTION_CUT), "cut", "slice"),
    PACK(List.of(Word.CAUTION_PACK), "pack", "seal", "label"),
    FRY(List.of(Word.CAUTION_FRY), "fry", "fri"),
    FILL(List.of(Word.CAUTION_FILL, Word.CAUTION_PACK), "fill", "bottle"),
    OTHER(List.of());

    private final List<Word> cautions;
    private final List<String> beginnings;

    Work(List<Word> cautions, String... beginnings) {
        this.cautions = cautions;
        this.beginnings = List.of(beginnings);
    }

    static Work of(String stage) {
        String word = stage.toLowerCase(Locale.ROOT);
        for (Work work : values()) if (work.beginnings.stream().anyMatch(word::startsWith)) return work;
        return OTHER;
    }

    List<Word> cautions() {
        return cautions;
    }

    /** Whether a temperature is taken. */
    boolean isMeasured() {
        return switch (this) {
            case COOK, SET, HEAT, FRY, FILL, COOL, COLD -> true;
            default -> false;
        };
    }

    /** Whether packs come out of it. */
    boolean packs() {
        return this == PACK || this == FILL;
    }
}
