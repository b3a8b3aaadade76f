package dawnkettle.shop;

import dawnkettle.measure.Money;
import java.time.LocalDate;

/** What one pack of a product costs on a price list from a day on. */
public record ListPrice(String priceList, String product, Money price, LocalDate from) {}
