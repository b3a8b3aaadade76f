package dawnkettle.conf;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Crew;
import dawnkettle.shop.Floor;
import dawnkettle.shop.Material;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Step;
import dawnkettle.shop.WorkStation;
import java.math.RoundingMode;
import java.util.List;

/** Whether every recipe can be made in the workroom as it stands. */
final class CheckRecipes {
    private final List<Placed<Recipe>> recipes;
    private final Floor floor;
    private final Problems problems;

    CheckRecipes(List<Placed<Recipe>> recipes, Floor floor, Problems problems) {
        this.recipes = recipes;
        this.floor = floor;
        this.problems = problems;
    }

    void check(List<Material> materials) {
        for (Placed<Recipe> recipe : recipes) {
            comesFromBeans(recipe);
            fitsATub(recipe);
            setsWithACoagulant(recipe, materials);
            for (Step step : recipe.value().steps()) {
                fits(recipe, step);
                hasHands(recipe, step);
            }
        }
    }

    private void comesFromBeans(Placed<Recipe> recipe) {
        Recipe at = recipe.value();
        for (int depth = 0; at.madeFrom().isPresent(); depth++) {
            String parent = at.madeFrom().get();
            if (depth > recipes.size()) {
                problems.add(
                        recipe.place(),
                        "recipe \"" + recipe.value().code() + "\" is made from itself in the end",
                        "let the chain of made_from begin at a recipe with a soak_group");
                return;
            }
            var next = recipes.stream()
                    .map(Placed::value)
                    .filter(r -> r.code().equals(parent))
                    .findFirst();
            if (next.isEmpty()) return;
            at = next.get();
        }
    }

    private void fitsATub(Placed<Recipe> recipe) {
        Mass most = recipe.value().kettle().most();
        if (recipe.value().soakGroup().isEmpty() || floor.tubs().isEmpty()) return;
        if (floor.tubs().stream().allMatch(tub -> tub.mostBeans().compareTo(most) < 0))
            problems.add(
                    recipe.place(),
                    "the largest batch of recipe \"" + recipe.value().code() + "\", " + kilograms(most)
                            + " of beans, fits no tub",
                    "lower most_kg, or raise most_beans_kg of a tub that holds them");
    }

    private void setsWithACoagulant(Placed<Recipe> recipe, List<Material> materials) {
        for (Material material : materials)
            if (recipe.value()
                            .coagulant()
                            .filter(c -> c.material().equals(material.code()))
                            .isPresent()
                    && material.kind() != Material.Kind.COAGULANT)
                problems.add(
                        recipe.place(),
                        "recipe \"" + recipe.value().code() + "\" is set with \"" + material.code()
                                + "\", which is no coagulant",
                        "name a material of kind coagulant");
    }

    private void fits(Placed<Recipe> recipe, Step step) {
        Mass largest =
                recipe.value().kettle().most().times(recipe.value().yield().mean(), RoundingMode.UP);
        List<WorkStation> stations = floor.stations().stream()
                .filter(station -> station.stage().equals(step.stage()))
                .toList();
        boolean byMass = !stations.isEmpty() && stations.stream().noneMatch(station -> station.places() > 0);
        if (byMass && stations.stream().allMatch(station -> station.capacity().compareTo(largest) < 0))
            problems.add(
                    recipe.place(),
                    "the largest batch of recipe \"" + recipe.value().code() + "\", " + kilograms(largest)
                            + ", fits no station of stage \"" + step.stage() + "\"",
                    "lower most_kg, or raise capacity_kg of a station");
    }

    private void hasHands(Placed<Recipe> recipe, Step step) {
        int most = floor.crews().stream().mapToInt(Crew::halfHands).max().orElse(0);
        if (step.halfHands() > most && !floor.crews().isEmpty())
            problems.add(
                    recipe.place(),
                    "step \"" + step.name() + "\" of recipe \"" + recipe.value().code()
                            + "\" needs more hands than are ever there",
                    "lower its hands, or add people to a crew");
    }

    private static String kilograms(Mass mass) {
        return mass.inKilograms(1, RoundingMode.HALF_UP).toPlainString() + " kg";
    }
}
