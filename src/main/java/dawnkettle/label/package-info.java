/** Case labels as plain data: element strings, dots, designs, printer profiles and every byte that goes to a label printer. */
package dawnkettle.label;
