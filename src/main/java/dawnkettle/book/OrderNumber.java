package dawnkettle.book;

/** An order's own reference, as the customer or the channel gave it: 1 to 40 of letters, digits, and - _ . / : */
public record OrderNumber(String text) implements Comparable<OrderNumber> {
    public OrderNumber {
        if (!text.matches("[A-Za-z0-9][A-Za-z0-9_./:-]{0,39}"))
            throw new IllegalArgumentException(
                    "order number \"" + text + "\" is not 1 to 40 of letters, digits, - _ . / :");
    }

    @Override
    public int compareTo(OrderNumber other) {
        return text.compareTo(other.text);
    }

    @Override
    public String toString() {
        return text;
    }
}
