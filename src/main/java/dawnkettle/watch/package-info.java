/** Whoever watches from outside is called; nothing else leaves here. */
package dawnkettle.watch;
