/** The steps of a night: read, compute, hand out, note done. */
package dawnkettle.night;
