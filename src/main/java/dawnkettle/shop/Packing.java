package dawnkettle.shop;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.measure.Volume;
import java.util.Optional;

/**
 * How a product is packed.
 *
 * @param net net mass of one pack, also where it is sold by volume
 * @param volume net volume of one pack, where it is sold by volume
 * @param packsInCase packs in a whole case, at least 1
 * @param block size of the piece as cooled; empty for milk
 * @param deposit what a returnable container costs the customer until it is back; zero for none
 */
public record Packing(
        Pack pack, Mass net, Optional<Volume> volume, int packsInCase, Optional<BlockSize> block, Money deposit) {}
