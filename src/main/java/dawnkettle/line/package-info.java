/** The serial line to the label printer, dumb: bytes out, bytes in, deadlines; and the folder that stands in for it. */
package dawnkettle.line;
