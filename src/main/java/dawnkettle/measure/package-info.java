/** Exact quantities: whole smallest units, no floating point, no rounding unasked. */
package dawnkettle.measure;
