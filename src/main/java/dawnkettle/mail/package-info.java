/** What is mailed, as plain data: the morning summary, the weekly cost report. */
package dawnkettle.mail;
