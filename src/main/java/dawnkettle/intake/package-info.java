/** Outside text into the shop's values: the drop folder, the thermometer. */
package dawnkettle.intake;
