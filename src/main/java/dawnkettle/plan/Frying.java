package dawnkettle.plan;

/**
 * What frying does to a kilogram of tofu, when all of its protein stays: how much is left, how much of that is oil taken
 * up, how much water goes off. All figures are shares of the mass.
 *
 * @param mass kg of fried product from a kilogram of tofu
 * @param oil kg of oil taken up by a kilogram of tofu
 * @param waterOff kg of water that leaves a kilogram of tofu, as steam or pressed out before
 */
public record Frying(double mass, double oil, double waterOff) {

    /** What a food is made of, in g of 100 g. */
    public record Food(double water, double protein, double fat) {
        public Food {
            if (water < 0 || protein <= 0 || fat < 0 || water + protein + fat > 100)
                throw new IllegalArgumentException("no food of 100 g holds " + water + " + " + protein + " + " + fat);
        }
    }

    public static Frying of(Food tofu, Food fried) {
        double mass = tofu.protein() / fried.protein();
        return new Frying(mass, (mass * fried.fat() - tofu.fat()) / 100, (tofu.water() - mass * fried.water()) / 100);
    }

    /** What is not accounted for, as a share of the tofu: tofu and oil less fried product and water. */
    public double unexplained() {
        return 1 + oil - mass - waterOff;
    }
}
