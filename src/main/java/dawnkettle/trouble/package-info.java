/** What an operator can put right, said with its place and its remedy. */
package dawnkettle.trouble;
