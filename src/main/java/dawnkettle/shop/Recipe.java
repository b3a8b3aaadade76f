package dawnkettle.shop;

import dawnkettle.measure.Share;
import java.util.List;
import java.util.Optional;

/**
 * How something is made.
 *
 * @param code short code, as "firm"
 * @param mark two capital letters for its lot codes
 * @param soakGroup recipes of one group share bean and soak; empty for a recipe made from another
 * @param madeFrom recipe that this one is made from, as fried pouches from thin firm
 * @param kettle batch sizes, in beans or in the mass of what it is made from
 * @param water grinding water per dry beans, by mass
 * @param solidsOfMilk solids in the milk, for information on the sheets
 * @param flavoured whether plain recipes go before it on a shared line
 * @param limits what a measured batch must have reached
 */
public record Recipe(
        String code,
        String name,
        String mark,
        Optional<String> soakGroup,
        Optional<String> madeFrom,
        Kettle kettle,
        Share water,
        Optional<Coagulant> coagulant,
        Yield yield,
        List<Ingredient> ingredients,
        List<Allergen> allergens,
        boolean flavoured,
        List<Step> steps,
        Limits limits) {
    public Recipe(
            String code,
            String name,
            String mark,
            Optional<String> soakGroup,
            Optional<String> madeFrom,
            Kettle kettle,
            Share water,
            Optional<Coagulant> coagulant,
            Yield yield,
            List<Ingredient> ingredients,
            List<Allergen> allergens,
            boolean flavoured,
            List<Step> steps) {
        this(
                code,
                name,
                mark,
                soakGroup,
                madeFrom,
                kettle,
                water,
                coagulant,
                yield,
                ingredients,
                allergens,
                flavoured,
                steps,
                Limits.CAREFUL);
    }

    public Recipe {
        ingredients = List.copyOf(ingredients);
        allergens = List.copyOf(allergens);
        steps = List.copyOf(steps);
        if (soakGroup.isPresent() == madeFrom.isPresent())
            throw new IllegalArgumentException("recipe " + code + " is made either from soaked beans or from a recipe");
    }

    /** The same recipe giving more or less. */
    public Recipe withYield(Yield other) {
        return new Recipe(
                code,
                name,
                mark,
                soakGroup,
                madeFrom,
                kettle,
                water,
                coagulant,
                other,
                ingredients,
                allergens,
                flavoured,
                steps,
                limits);
    }

    /** The same recipe step by step otherwise. */
    public Recipe withSteps(List<Step> others) {
        return new Recipe(
                code,
                name,
                mark,
                soakGroup,
                madeFrom,
                kettle,
                water,
                coagulant,
                yield,
                ingredients,
                allergens,
                flavoured,
                others,
                limits);
    }
}
