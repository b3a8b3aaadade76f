/** Mail going out: by SMTP, or into a folder. */
package dawnkettle.post;
