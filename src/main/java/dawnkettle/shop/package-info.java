/** What the owner wrote down: products, recipes, stations, tubs, routes, customers, calendar, materials. */
package dawnkettle.shop;
