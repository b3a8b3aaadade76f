package dawnkettle.cost;

import dawnkettle.measure.Money;

/**
 * A customer, a product or a round in a week: what it brought and what it cost.
 *
 * @param goods what its packs cost, without vans
 * @param vans its share of the vans
 */
public record Carrier(String code, Money sales, Money goods, Money vans) {
    public Money left() {
        return sales.minus(goods).minus(vans);
    }

    Carrier plus(Carrier other) {
        return new Carrier(code, sales.plus(other.sales), goods.plus(other.goods), vans.plus(other.vans));
    }

    Carrier named(String other) {
        return new Carrier(other, sales, goods, vans);
    }
}
