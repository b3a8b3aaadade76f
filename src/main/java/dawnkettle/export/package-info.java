/** What leaves the shop as open data: the plan and the soak call as JSON, with the schema that holds them. */
package dawnkettle.export;
