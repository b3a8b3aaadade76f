package dawnkettle.shop;

/** An allergen that a label must name. The list joins those of the United States (nine) and of the European Union (14). */
public enum Allergen {
    SOY,
    WHEAT,
    BARLEY,
    RYE,
    OATS,
    MILK,
    EGGS,
    FISH,
    CRUSTACEANS,
    MOLLUSCS,
    PEANUTS,
    TREE_NUTS,
    SESAME,
    CELERY,
    MUSTARD,
    LUPIN,
    SULPHITES;

    /** The word as {@code conf/} and a label in English write it, in lower case. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
    }
}
