/** Sheets of paper as plain marks at millimetres, and the ports through which they are drawn and printed. */
package dawnkettle.sheet;
