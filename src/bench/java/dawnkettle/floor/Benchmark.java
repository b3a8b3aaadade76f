package dawnkettle.floor;

import java.util.List;

/** Measures the run engine; {@code src/docs/benchmarks.md} says what each part shows. */
final class Benchmark {
    /** The default of {@code conf/shop.toml}. */
    private static final Budget DEFAULT = new Budget(Long.getLong("decodes", 20_000), 1, 600_000);

    private Benchmark() {}

    /** @param parts days, exact, shops, growth, small; or all */
    public static void main(String[] parts) {
        List<String> wanted = List.of(parts);
        boolean all = wanted.isEmpty() || wanted.contains("all");
        int broken = 0;
        if (all || wanted.contains("growth")) new Growth().print();
        if (all || wanted.contains("small")) broken += new SmallDays().print(Integer.getInteger("small", 300));
        if (all || wanted.contains("days"))
            broken += new DaySuite(DEFAULT, Integer.getInteger("seeds", 10), Integer.getInteger("large", 10)).print();
        if (all || wanted.contains("shops")) new FlowShops(DEFAULT).print();
        if (all || wanted.contains("exact"))
            broken += new AgainstExact(DEFAULT, Integer.getInteger("seconds", 30))
                    .print(Integer.getInteger("exact.seeds", 3), 10, 25, 40, 60);
        System.out.println(broken == 0 ? "No rule broken." : "Rules broken: " + broken);
        if (broken > 0) System.exit(1);
    }
}
