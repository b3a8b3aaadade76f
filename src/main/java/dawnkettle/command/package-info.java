/** The command line. */
package dawnkettle.command;
