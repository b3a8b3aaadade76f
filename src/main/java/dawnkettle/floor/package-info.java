/** The run: jobs through stations with limited waits, hands and changeovers; knows no tofu. Minutes count from the day's first minute. */
package dawnkettle.floor;
