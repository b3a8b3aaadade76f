/** Reads what the owner wrote down in {@code conf/} and says everything that is wrong with it at once. */
package dawnkettle.conf;
