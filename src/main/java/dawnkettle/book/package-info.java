/** The order book: lines and amendments that are only ever added, and the day they are made for. */
package dawnkettle.book;
