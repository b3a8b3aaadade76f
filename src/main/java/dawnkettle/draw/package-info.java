/** Designs, barcodes, charts and sheets as dots, pictures and PDF. */
package dawnkettle.draw;
