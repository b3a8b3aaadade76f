package dawnkettle.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;

/** An amount in whole minor units (cents) of one currency; may be below zero. */
public record Money(long minor, Currency currency) implements Comparable<Money> {
    public static Money minor(long minor, Currency currency) {
        return new Money(minor, currency);
    }

    public static Money zero(Currency currency) {
        return new Money(0, currency);
    }

    /** An amount written as a decimal. @throws ArithmeticException when it has more places than the currency */
    public static Money of(BigDecimal amount, Currency currency) {
        return new Money(
                amount.movePointRight(currency.getDefaultFractionDigits()).longValueExact(), currency);
    }

    public Money plus(Money other) {
        return new Money(Math.addExact(minor, same(other).minor), currency);
    }

    public Money minus(Money other) {
        return new Money(Math.subtractExact(minor, same(other).minor), currency);
    }

    public Money times(long count) {
        return new Money(Math.multiplyExact(minor, count), currency);
    }

    public Money times(BigDecimal factor, RoundingMode rounding) {
        return new Money(
                BigDecimal.valueOf(minor).multiply(factor).setScale(0, rounding).longValueExact(), currency);
    }

    public Money times(Share share, RoundingMode rounding) {
        return times(share.asDecimal(), rounding);
    }

    public boolean isNegative() {
        return minor < 0;
    }

    public BigDecimal amount() {
        return BigDecimal.valueOf(minor, currency.getDefaultFractionDigits());
    }

    private Money same(Money other) {
        if (!currency.equals(other.currency))
            throw new IllegalArgumentException("cannot join " + this + " and " + other + ": two currencies");
        return other;
    }

    @Override
    public int compareTo(Money other) {
        return Long.compare(minor, same(other).minor);
    }

    @Override
    public String toString() {
        return amount().toPlainString() + " " + currency.getCurrencyCode();
    }
}
