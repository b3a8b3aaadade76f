/** The whole computation: demand, batches, soak, run, lots and allocation, as one {@code DayPlan}. */
package dawnkettle.plan;
