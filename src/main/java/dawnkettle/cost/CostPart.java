package dawnkettle.cost;

/** What a cost is made of. */
public enum CostPart {
    BEANS("beans"),
    ADDITIONS("coagulant, oil, flavour"),
    PACKAGING("packaging"),
    ENERGY("cooking heat"),
    WATER("water"),
    LABOUR("work"),
    DELIVERY("vans"),
    OVERHEAD("rent and overhead"),
    OKARA("okara, brought in");

    private final String words;

    CostPart(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
