package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

class KettlesTest {
    /** Every choice of batches and sizes, counted out: none is cheaper than the programme's. */
    @Property(tries = 1000, seed = "7")
    void no_choice_is_cheaper(@ForAll @LongRange(min = 1, max = 1_000_000) long seed) {
        Random dice = new Random(seed);
        Shop shop = AnyShop.of(seed);
        List<Kettles.Need> needs = shop.recipes().stream()
                .filter(recipe -> recipe.soakGroup().isPresent())
                .limit(2)
                .map(recipe -> need(recipe, dice))
                .toList();
        Kettles.Source source = new Kettles.Source(
                "beans",
                50 + dice.nextInt(300),
                Mass.kilograms(dice.nextInt(30)),
                Mass.kilograms(20 + dice.nextInt(60)));
        int slots = 1 + dice.nextInt(5);
        Kettles.Choice choice = Kettles.choose(needs, source, slots);
        assertThat(choice.cost()).isEqualTo(cheapest(needs, source, slots));
        assertThat(cost(needs, choice, source)).isEqualTo(choice.cost());
    }

    private static Kettles.Need need(Recipe recipe, Random dice) {
        return new Kettles.Need(
                recipe,
                Mass.grams(dice.nextInt(120_000)),
                Mass.grams(dice.nextInt(40_000)),
                dice.nextInt(1_500),
                dice.nextInt(3_000),
                1 + dice.nextInt(3));
    }

    private static long cost(List<Kettles.Need> needs, Kettles.Choice choice, Kettles.Source source) {
        long cost = 0;
        Mass beans = Mass.ZERO;
        for (Kettles.Need need : needs) {
            List<Mass> sizes = choice.sizes().get(need.recipe().code());
            Mass own = Mass.sum(sizes);
            cost += Kettles.costOf(need, source, sizes.size(), own);
            beans = beans.plus(own);
        }
        return cost + Kettles.leftOverCost(source, beans);
    }

    private static long cheapest(List<Kettles.Need> needs, Kettles.Source source, int slots) {
        long least = Long.MAX_VALUE;
        for (List<Own> all : combinations(needs)) {
            int kettles = all.stream().mapToInt(Own::kettles).sum();
            Mass beans = Mass.sum(all.stream().map(Own::beans).toList());
            if (kettles > slots || beans.compareTo(source.most()) > 0) continue;
            long cost = Kettles.leftOverCost(source, beans);
            for (int i = 0; i < needs.size(); i++)
                cost += Kettles.costOf(
                        needs.get(i), source, all.get(i).kettles(), all.get(i).beans());
            least = Math.min(least, cost);
        }
        return least;
    }

    private record Own(int kettles, Mass beans) {}

    private static List<List<Own>> combinations(List<Kettles.Need> needs) {
        List<List<Own>> all = new ArrayList<>(List.of(List.of()));
        for (Kettles.Need need : needs) {
            List<List<Own>> longer = new ArrayList<>();
            for (List<Own> before : all)
                for (Own own : every(need)) {
                    List<Own> more = new ArrayList<>(before);
                    more.add(own);
                    longer.add(more);
                }
            all = longer;
        }
        return all;
    }

    private static List<Own> every(Kettles.Need need) {
        List<Own> every = new ArrayList<>(List.of(new Own(0, Mass.ZERO)));
        var kettle = need.recipe().kettle();
        for (int kettles = 1; kettles <= need.mostKettles(); kettles++)
            for (Mass beans = kettle.least().times(kettles);
                    beans.compareTo(kettle.most().times(kettles)) <= 0;
                    beans = beans.plus(kettle.step())) every.add(new Own(kettles, beans));
        return every;
    }
}
