package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Kettle;
import dawnkettle.shop.Recipe;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How many kettles of what, of which size: the exact least cost over all recipes that share the cookers and the soaked
 * beans, by a dynamic programme over kettles and beans in handy steps. Costs are in minor units of the currency.
 */
public final class Kettles {
    private static final long NEVER = Long.MAX_VALUE / 4;

    /** Surplus that the next days will likely take is worth this share (in percent) of its beans. */
    private static final int SURPLUS_WORTH_PERCENT = 80;

    private Kettles() {}

    /**
     * What one recipe has to give.
     *
     * @param usable mass to be packed or passed on
     * @param likely more mass that the coming days would take
     * @param shortPerKilogram cost of a kilogram not made
     * @param perKettle cost of a batch, of any size
     * @param mostKettles at most so many batches
     */
    public record Need(
            Recipe recipe, Mass usable, Mass likely, long shortPerKilogram, long perKettle, int mostKettles) {}

    /**
     * The beans (or what else) that recipes share.
     *
     * @param committed soaked already: what is left over of them is lost
     * @param most all that can be had
     */
    public record Source(String name, long perKilogram, Mass committed, Mass most) {}

    /** Sizes of a recipe's batches, largest first, and what all cost. */
    public record Choice(Map<String, List<Mass>> sizes, long cost) {}

    /** The cheapest sizes for {@code needs} that draw on {@code source} with at most {@code slots} batches in all. */
    public static Choice choose(List<Need> needs, Source source, int slots) {
        long unit = unit(needs);
        int mostUnits = (int) Math.min(source.most().milligrams() / unit, 100_000);
        List<List<Option>> options = new ArrayList<>();
        int useful = 0;
        for (Need need : needs) {
            List<Option> own = options(need, source, unit);
            useful += own.stream().mapToInt(Option::units).max().orElse(0);
            options.add(own);
        }
        mostUnits = Math.min(mostUnits, useful);
        int kettles = Math.min(
                slots,
                options.stream()
                        .mapToInt(own ->
                                own.stream().mapToInt(Option::kettles).max().orElse(0))
                        .sum());
        return new Table(options, kettles, mostUnits).cheapest(needs, source, unit);
    }

    private record Option(int kettles, int units, long cost) {}

    private static long unit(List<Need> needs) {
        BigInteger unit = BigInteger.ZERO;
        for (Need need : needs) {
            Kettle kettle = need.recipe().kettle();
            unit = unit.gcd(BigInteger.valueOf(kettle.least().milligrams()))
                    .gcd(BigInteger.valueOf(kettle.step().milligrams()));
        }
        return unit.longValueExact();
    }

    private static List<Option> options(Need need, Source source, long unit) {
        Kettle kettle = need.recipe().kettle();
        Mass enough = need.usable().plus(need.likely());
        List<Option> options = new ArrayList<>();
        options.add(new Option(0, 0, shortCost(need, Mass.ZERO)));
        for (int kettles = 1; kettles <= need.mostKettles(); kettles++) {
            Mass most = kettle.most().times(kettles);
            for (Mass beans = kettle.least().times(kettles);
                    beans.compareTo(most) <= 0;
                    beans = beans.plus(kettle.step())) {
                Mass made = usable(need.recipe(), beans, kettles);
                options.add(
                        new Option(kettles, (int) (beans.milligrams() / unit), costOf(need, source, kettles, beans)));
                if (made.compareTo(enough) >= 0 && beans.compareTo(source.committed()) >= 0) break;
            }
            if (usable(need.recipe(), kettle.least().times(kettles), kettles).compareTo(enough) >= 0
                    && kettle.least().times(kettles).compareTo(source.committed()) >= 0) break;
        }
        return options;
    }

    /** Beans, wages and what is not made, less what the surplus is worth. */
    static long costOf(Need need, Source source, int kettles, Mass beans) {
        Mass made = usable(need.recipe(), beans, kettles);
        Mass surplus = Mass.min(made.minusOrZero(need.usable()), need.likely());
        long worth = made.isZero()
                ? 0
                : Math.multiplyExact(perKilogram(beans, source.perKilogram()), SURPLUS_WORTH_PERCENT)
                        * (surplus.milligrams() / 1000)
                        / (made.milligrams() / 1000)
                        / 100;
        return kettles * need.perKettle() + perKilogram(beans, source.perKilogram()) + shortCost(need, made) - worth;
    }

    /** Soaked beans that nothing is made of are lost, and have to be got rid of. */
    static long leftOverCost(Source source, Mass beans) {
        return perKilogram(source.committed().minusOrZero(beans), source.perKilogram()) * 11 / 10;
    }

    private static long shortCost(Need need, Mass made) {
        return perKilogram(need.usable().minusOrZero(made), need.shortPerKilogram());
    }

    private static long perKilogram(Mass mass, long minor) {
        return mass.milligrams() / 1000 * minor / 1000;
    }

    /** What {@code kettles} batches of together {@code beans} give; every batch loses its own fraction of a gram. */
    private static Mass usable(Recipe recipe, Mass beans, int kettles) {
        return Brew.usable(recipe, beans).minusOrZero(Mass.grams(2L * kettles));
    }

    /** Splits {@code total} into {@code kettles} sizes as even as steps allow, the larger ones first. */
    static List<Mass> split(Kettle kettle, Mass total, int kettles) {
        long steps = total.minus(kettle.least().times(kettles)).dividedBy(kettle.step());
        List<Mass> sizes = new ArrayList<>();
        for (int i = 0; i < kettles; i++) {
            long own = steps / kettles + (i < steps % kettles ? 1 : 0);
            sizes.add(kettle.least().plus(kettle.step().times(own)));
        }
        return sizes;
    }

    /** Least cost by recipes so far, batches and beans. */
    private static final class Table {
        private final List<List<Option>> options;
        private final int width;
        private final int height;
        private final int[][] chosen;

        Table(List<List<Option>> options, int kettles, int units) {
            this.options = options;
            this.width = units + 1;
            this.height = kettles + 1;
            this.chosen = new int[options.size()][];
        }

        Choice cheapest(List<Need> needs, Source source, long unit) {
            long[] cost = new long[width * height];
            Arrays.fill(cost, NEVER);
            cost[0] = 0;
            for (int recipe = 0; recipe < options.size(); recipe++) cost = add(recipe, cost);
            int best = 0;
            long least = NEVER;
            for (int at = 0; at < cost.length; at++) {
                Mass beans = Mass.milligrams(at % width * unit);
                long whole = cost[at] >= NEVER ? NEVER : cost[at] + leftOverCost(source, beans);
                if (whole < least) {
                    least = whole;
                    best = at;
                }
            }
            return new Choice(walkBack(needs, best, unit), least);
        }

        private long[] add(int recipe, long[] before) {
            long[] after = new long[before.length];
            Arrays.fill(after, NEVER);
            int[] choice = new int[before.length];
            List<Option> own = options.get(recipe);
            for (int at = 0; at < before.length; at++) {
                if (before[at] >= NEVER) continue;
                for (int o = 0; o < own.size(); o++) {
                    Option option = own.get(o);
                    int kettles = at / width + option.kettles();
                    int units = at % width + option.units();
                    if (kettles >= height || units >= width) continue;
                    int to = kettles * width + units;
                    if (before[at] + option.cost() < after[to]) {
                        after[to] = before[at] + option.cost();
                        choice[to] = o;
                    }
                }
            }
            chosen[recipe] = choice;
            return after;
        }

        private Map<String, List<Mass>> walkBack(List<Need> needs, int end, long unit) {
            Map<String, List<Mass>> sizes = new LinkedHashMap<>();
            int at = end;
            for (int recipe = options.size() - 1; recipe >= 0; recipe--) {
                Option option = options.get(recipe).get(chosen[recipe][at]);
                Recipe own = needs.get(recipe).recipe();
                sizes.put(own.code(), split(own.kettle(), Mass.milligrams(option.units() * unit), option.kettles()));
                at -= option.kettles() * width + option.units();
            }
            return sizes;
        }
    }
}
