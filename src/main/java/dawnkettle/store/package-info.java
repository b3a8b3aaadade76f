/** The ledger: what was ordered, decided, done and recorded, in one SQLite file. */
package dawnkettle.store;
