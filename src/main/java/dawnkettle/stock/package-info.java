/** Lots and what happened to them. */
package dawnkettle.stock;
