/** Paper going out: to a print queue, or into a folder. */
package dawnkettle.paper;
