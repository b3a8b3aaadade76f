package dawnkettle.plan;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
import dawnkettle.shop.Recipe;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the water and the solids of soaked batches go, stream by stream: each by its own published share or by the plan,
 * none made to fit but the whey, which is what drains off. What is not accounted for is told.
 *
 * @param in beans, water taken up in the tub, mill water, steam, coagulant
 * @param out product, okara, whey, what leached into the soak water, and what is lost with the milk on cloths and walls
 * @param megajoules heat to the boil
 */
public record BatchBalance(List<Stream> in, List<Stream> out, double megajoules) {
    /** Nothing. */
    public static final BatchBalance NONE = new BatchBalance(List.of(), List.of(), 0);

    /** Limits within which a balance counts as closed (the shop's rule, no source). */
    private static final double WATER_LIMIT = 0.01;

    private static final double SOLIDS_LIMIT = 0.03;

    /** One thing that goes in or comes out. */
    public record Stream(String name, Mass water, Mass solids) {
        public Mass mass() {
            return water.plus(solids);
        }

        Stream plus(Stream other) {
            return new Stream(name, water.plus(other.water), solids.plus(other.solids));
        }
    }

    public BatchBalance {
        in = List.copyOf(in);
        out = List.copyOf(out);
    }

    /**
     * Of one batch that was soaked.
     *
     * @param tap temperature from which the slurry is heated
     */
    public static BatchBalance of(Recipe recipe, PlannedBatch batch, Celsius tap) {
        Mass solids = part(batch.beans(), MassBalance.WATER_OF_BEANS.rest());
        Mass steam = MassBalance.steam(recipe, batch.beans(), tap);
        List<Stream> in = new ArrayList<>();
        in.add(new Stream("beans", batch.beans().minus(solids), solids));
        in.add(water("taken up in the tub", MassBalance.takenUp(batch.beans())));
        in.add(water("mill water", batch.water()));
        if (!steam.isZero()) in.add(water("steam", steam));
        Stream coagulant =
                batch.coagulant().map(dose -> coagulant(recipe, dose.mass())).orElse(water("coagulant", Mass.ZERO));
        if (!coagulant.mass().isZero()) in.add(coagulant);
        return new BatchBalance(
                in, out(recipe, batch, solids, coagulant), MassBalance.megajoules(recipe, batch.beans(), tap));
    }

    private static List<Stream> out(Recipe recipe, PlannedBatch batch, Mass solids, Stream coagulant) {
        Mass okara = MassBalance.okara(batch.beans());
        Mass okaraSolids = part(solids, MassBalance.SOLIDS_TO_OKARA);
        Mass milk = MassBalance.milk(batch.beans(), batch.beans().times(recipe.water(), RoundingMode.HALF_UP));
        Mass milkSolids = part(solids, MassBalance.SOLIDS_TO_MILK);
        Mass lostSolids = part(solids, MassBalance.lost());
        Mass milkWater = milk.minusOrZero(solids.minus(okaraSolids));
        Mass lostWater = with(lostSolids, milkWater, milkSolids);
        Mass leached = part(solids, MassBalance.SOLIDS_LEACHED);
        boolean isTofu = recipe.coagulant().isPresent();
        Mass productSolids = isTofu ? part(solids, MassBalance.SOLIDS_TO_TOFU) : milkSolids;
        Mass productWater = batch.expected().minusOrZero(productSolids);
        List<Stream> out = new ArrayList<>();
        out.add(new Stream("product", productWater, productSolids));
        out.add(new Stream("okara", okara.minusOrZero(okaraSolids), okaraSolids));
        if (isTofu)
            out.add(new Stream(
                    "whey",
                    milkWater.plus(coagulant.water()).minusOrZero(lostWater).minusOrZero(productWater),
                    milkSolids.minusOrZero(productSolids).plus(coagulant.solids())));
        out.add(new Stream("leached in the soak", Mass.ZERO, leached));
        out.add(new Stream("lost on cloths and walls", lostWater, lostSolids));
        return out;
    }

    /** As much water as comes with {@code solids} in something of {@code water} and {@code of}. */
    private static Mass with(Mass solids, Mass water, Mass of) {
        if (of.isZero()) return Mass.ZERO;
        return Mass.milligrams(Math.round((double) solids.milligrams() * water.milligrams() / of.milligrams()));
    }

    private static Mass part(Mass mass, Share share) {
        return mass.times(share, RoundingMode.HALF_UP);
    }

    private static Stream water(String name, Mass mass) {
        return new Stream(name, mass, Mass.ZERO);
    }

    private static Stream coagulant(Recipe recipe, Mass weighed) {
        Mass salt = part(weighed, recipe.coagulant().orElseThrow().strength());
        return new Stream("coagulant", weighed.minus(salt), salt);
    }

    /** Both together, stream by stream. */
    public BatchBalance plus(BatchBalance other) {
        return new BatchBalance(sum(in, other.in), sum(out, other.out), megajoules + other.megajoules);
    }

    private static List<Stream> sum(List<Stream> some, List<Stream> more) {
        List<Stream> all = new ArrayList<>(some);
        for (Stream one : more) {
            int at = 0;
            while (at < all.size() && !all.get(at).name().equals(one.name())) at++;
            if (at == all.size()) all.add(one);
            else all.set(at, all.get(at).plus(one));
        }
        return all;
    }

    /** Mass of one stream; zero where there is none of that name. */
    public Mass mass(String name) {
        List<Stream> all = new ArrayList<>(in);
        all.addAll(out);
        return Mass.sum(all.stream()
                .filter(stream -> stream.name().equals(name))
                .map(Stream::mass)
                .toList());
    }

    /** Water in, less water out, as a share of the water in. */
    public double waterUnaccounted() {
        return missing(
                in.stream().mapToLong(stream -> stream.water().milligrams()).sum(),
                out.stream().mapToLong(stream -> stream.water().milligrams()).sum());
    }

    /** Solids in, less solids out, the loss counted as out, as a share of the solids in. */
    public double solidsUnaccounted() {
        return missing(
                in.stream().mapToLong(stream -> stream.solids().milligrams()).sum(),
                out.stream().mapToLong(stream -> stream.solids().milligrams()).sum());
    }

    private static double missing(long in, long out) {
        return in == 0 ? 0 : (double) (in - out) / in;
    }

    public boolean isClosed() {
        return Math.abs(waterUnaccounted()) <= WATER_LIMIT && Math.abs(solidsUnaccounted()) <= SOLIDS_LIMIT;
    }
}
