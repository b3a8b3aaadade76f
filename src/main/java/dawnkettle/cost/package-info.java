/** What a week cost, by product and by part, and what moved it. */
package dawnkettle.cost;
