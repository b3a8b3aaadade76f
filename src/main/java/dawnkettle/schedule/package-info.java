/** Quartz, and only it: it ticks, the ledger decides what is due. */
package dawnkettle.schedule;
