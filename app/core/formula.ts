/**
 * What starts a formula in some spreadsheet, blanks and invisible marks before it or not, unless the whole cell is a plain decimal: "-0.5" is the number
 * it says, while "-1+2", "+3" and "−4" are text. Every table that leaves the program puts an apostrophe before such a cell, and one that comes in
 * loses it again.
 * Method: Open Worldwide Application Security Project, CSV injection (from memory).
 */
export const formula = /^(?!-?\d+(?:\.\d+)?$)(?:[\t\r\n]|[\s\p{Cc}\p{Cf}]*[=+\-@−＝＋－＠﹦﹢﹣﹫])/u;
