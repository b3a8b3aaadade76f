package dawnkettle.mail;

import dawnkettle.cost.CostPart;
import dawnkettle.cost.Moves;
import dawnkettle.cost.Moves.Cause;
import dawnkettle.cost.ProductCost;
import dawnkettle.cost.WeekCosts;
import dawnkettle.measure.Money;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/** What moved the cost of a week, a sentence a cause. */
final class CostWords {
    /** A move of less than a thousandth of the whole has no sentence of its own. */
    private static final long SMALL = 1_000;

    private final WeekCosts before;
    private final WeekCosts now;
    private final String currency;

    CostWords(WeekCosts before, WeekCosts now) {
        this.before = before;
        this.now = now;
        this.currency = now.all().total().currency().getCurrencyCode();
    }

    List<String> sentences() {
        Moves moves = Moves.between(before, now);
        List<String> sentences = new ArrayList<>();
        Money small = moves.whole().minus(moves.whole());
        for (Cause cause : Cause.values()) {
            Money amount = moves.parts().get(cause);
            if (isSmall(amount)) small = small.plus(amount);
            else sentences.add(amount(amount) + ": " + why(cause));
        }
        if (small.minor() != 0) sentences.add(amount(small) + ": smaller moves together.");
        sentences.add(
                amount(moves.whole()) + " in all: " + Figures.money(now.all().total()) + " " + currency + " after "
                        + Figures.money(before.all().total()) + ".");
        return sentences;
    }

    /** What the week cost beyond what is written down, a sentence a cause; volume and mix are the same in both. */
    List<String> againstStandard() {
        Moves moves = Moves.between(before, now);
        List<String> sentences = new ArrayList<>();
        Money small = moves.whole().minus(moves.whole());
        for (Cause cause : Cause.values()) {
            Money amount = moves.parts().get(cause);
            if (isSmall(amount)) small = small.plus(amount);
            else sentences.add(amount(amount) + ": " + standard(cause));
        }
        if (small.minor() != 0) sentences.add(amount(small) + ": smaller differences together.");
        sentences.add(
                amount(moves.whole()) + " in all: " + Figures.money(now.all().total()) + " " + currency + ", and "
                        + Figures.money(before.all().total()) + " by recipes, standard prices and full kettles.");
        return sentences;
    }

    private String standard(Cause cause) {
        ProductCost then = before.all();
        ProductCost today = now.all();
        return switch (cause) {
            case VOLUME, MIX -> "products that the shop no longer has.";
            case BEAN_PRICE -> "beans cost " + today.beanPrice() + " a kg, standard is " + then.beanPrice() + ".";
            case BEAN_USE ->
                kilograms(today.beans()) + " kg of beans were used, the recipes take " + kilograms(then.beans()) + ".";
            case WAGE -> "an hour of work cost another sum than the standard.";
            case WORK_USE ->
                "the work took " + minutes(today) + " minutes for 100 kg, with full kettles " + minutes(then) + ".";
            case MATERIALS ->
                "coagulant, oil, flavour and packaging: "
                        + each(today, CostPart.ADDITIONS, CostPart.PACKAGING) + " a kg made, standard is "
                        + each(then, CostPart.ADDITIONS, CostPart.PACKAGING) + ".";
            case HEAT ->
                "heat and water: " + each(today, CostPart.ENERGY, CostPart.WATER) + " a kg made, standard is "
                        + each(then, CostPart.ENERGY, CostPart.WATER) + ".";
            case VANS -> "a round cost another sum than the standard.";
            case RENT -> "rent and overhead of a day were another sum than the standard.";
            case OKARA -> "okara brought another sum than the standard.";
        };
    }

    private static String kilograms(dawnkettle.measure.Mass mass) {
        return mass.inKilograms(0, RoundingMode.HALF_UP).toPlainString();
    }

    private boolean isSmall(Money amount) {
        return Math.abs(amount.minor()) * SMALL < now.all().total().minor();
    }

    private String why(Cause cause) {
        ProductCost then = before.all();
        ProductCost today = now.all();
        return switch (cause) {
            case VOLUME -> kilograms(today) + " kg were made, after " + kilograms(then) + ".";
            case MIX -> "what was made shifted between dearer and cheaper products.";
            case BEAN_PRICE -> "beans cost " + today.beanPrice() + " a kg, after " + then.beanPrice() + ".";
            case BEAN_USE ->
                "a kg of beans gave " + today.yield() + " kg, after " + then.yield() + ", counted product by product.";
            case WAGE -> "an hour of work cost another sum.";
            case WORK_USE ->
                "the work took " + minutes(today) + " minutes for 100 kg, after " + minutes(then)
                        + ", counted product by product.";
            case MATERIALS ->
                "coagulant, oil, flavour and packaging came to "
                        + each(today, CostPart.ADDITIONS, CostPart.PACKAGING) + " a kg made, after "
                        + each(then, CostPart.ADDITIONS, CostPart.PACKAGING) + ".";
            case HEAT ->
                "heat and water came to " + each(today, CostPart.ENERGY, CostPart.WATER) + " a kg made, after "
                        + each(then, CostPart.ENERGY, CostPart.WATER) + ".";
            case VANS ->
                "vans came to " + each(today, CostPart.DELIVERY) + " a kg made, after " + each(then, CostPart.DELIVERY)
                        + ": the same rounds over more kilograms cost each less.";
            case RENT ->
                "rent and overhead came to " + each(today, CostPart.OVERHEAD) + " a kg made, after "
                        + each(then, CostPart.OVERHEAD) + ", spread over what was made.";
            case OKARA -> "okara brought another sum.";
        };
    }

    private static String each(ProductCost cost, CostPart... parts) {
        Money sum = Money.zero(cost.total().currency());
        for (CostPart part : parts) sum = sum.plus(cost.part(part));
        return cost.perKilogram(sum).toPlainString();
    }

    /** As "+12.40" or "-3.05". */
    private static String amount(Money money) {
        return (money.isNegative() ? "" : "+") + Figures.money(money);
    }

    private static String kilograms(ProductCost cost) {
        return cost.mass().inKilograms(0, RoundingMode.HALF_UP).toPlainString();
    }

    private static String minutes(ProductCost cost) {
        if (cost.mass().isZero()) return "0";
        return BigDecimal.valueOf(cost.handSeconds())
                .multiply(BigDecimal.valueOf(100_000_000L))
                .divide(
                        BigDecimal.valueOf(60)
                                .multiply(BigDecimal.valueOf(cost.mass().milligrams())),
                        0,
                        RoundingMode.HALF_UP)
                .toPlainString();
    }
}
