package dawnkettle.stock;

import java.time.LocalDate;

/**
 * Finished packs of one lot in the cold room.
 *
 * @param packs packs that are not promised to anybody
 * @param expected true where they were not counted since the last production day
 */
public record StockLot(
        LotCode lot, String product, int packs, LocalDate packDate, LocalDate bestBefore, boolean expected) {}
